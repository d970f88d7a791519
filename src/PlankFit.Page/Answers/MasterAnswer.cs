using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Solids;
using PlankFit.Planking.Planks;
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

    public static ImmutableArray<MasterAnswer> Of(BottomPlan plan, string? units)
    {
        ImmutableArray<MasterAnswer>.Builder masters = ImmutableArray.CreateBuilder<MasterAnswer>();
        LengthUnit unit = ShownLength.Unit(plan.Job, units);
        // The layers of all other panels are counted through, as their heads stand in the file.
        int before = 0;
        foreach ((BottomPlan panel, int n) in plan.Panels.Select((p, n) => (p, n)))
        {
            for (int i = 0; i < panel.Layers.Length; i++)
            {
                string table =
                    n == 0
                        ? string.Create(CultureInfo.InvariantCulture, $"layer[{i}]")
                        : string.Create(
                            CultureInfo.InvariantCulture,
                            $"panel[{n - 1}].layer[{before + i}]"
                        );
                if (
                    panel.Layers[i] is PlankLayerPlan layer
                    && MasterPlace.Of(panel, layer, unit) is { } master
                )
                {
                    masters.Add(Of(plan.Job, unit, layer.Code, $"{table}.master", master));
                }
            }

            before += n == 0 ? 0 : panel.Layers.Length;
        }

        return masters.ToImmutable();
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
