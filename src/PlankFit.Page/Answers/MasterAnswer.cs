using System.Collections.Immutable;
using PlankFit.Export.Solids;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Editing;

namespace PlankFit.Pages.Answers;

/// <summary>The master plank of a skin, asked for and laid, for who moves it by hand.</summary>
/// <param name="Address">Of the field that asks for its place.</param>
/// <param name="AskedX">mm aft; the words beside it are those of the job's own file.</param>
/// <param name="Middle">Points (x, y, z) of the line along which it moves, from forward aft, mm, to starboard.</param>
internal sealed record MasterAnswer(
    string Layer,
    string Address,
    string Plank,
    double AskedX,
    double LaidX,
    ImmutableArray<ImmutableArray<double>> Middle
)
{
    public required ImmutableArray<ImmutableArray<double>> Across { get; init; }

    public required string Asked { get; init; }

    public required string Laid { get; init; }

    public required string Why { get; init; }

    /// <param name="text">Of the job, in which the fields are.</param>
    public static ImmutableArray<MasterAnswer> Of(BottomPlan plan, string text, string? units)
    {
        LengthUnit unit = ShownLength.Unit(plan.Job, units);
        TextLayer[] written = [.. TextLayer.All(text)];
        return
        [
            .. from l in plan.AllPlankLayers
            let name = ReferenceEquals(l.Panel, plan) ? null : l.Panel.Job.Hull.Panel.Name
            let at = written.FirstOrDefault(w =>
                w.Panel == name
                && w.Number == l.Layer.Number
                && w.Written.GetValueOrDefault("name", l.Layer.Planks.Name) == l.Layer.Planks.Name
            )
            where at is not null
            let master = MasterPlace.Of(l.Panel, l.Layer, unit)
            where master is not null
            select Of(plan.Job, unit, l.Layer.Code, $"{at.Table}.master", master),
        ];
    }

    private static MasterAnswer Of(
        Job job,
        LengthUnit unit,
        string layer,
        string address,
        MasterPlace master
    ) =>
        new(layer, address, master.Plank.ToString(), master.AskedMm, master.LaidMm, master.Middle)
        {
            Across = master.Across,
            Asked = PositionText.Shown(job, master.AskedMm, unit),
            Laid = PositionText.Shown(job, master.LaidMm, unit),
            Why = master.Why,
        };
}
