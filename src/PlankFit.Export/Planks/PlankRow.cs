using System.Collections.Immutable;
using PlankFit.Export.Joints;
using PlankFit.Export.Words;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Planks;

/// <summary>A plank with what is needed to speak of it: its layer, the job's unit, what was found about it, and its ends read for the saw.</summary>
internal sealed record PlankRow(BottomPlan Plan, PlankLayerPlan Layer, Plank Plank)
{
    public LengthUnit Unit => Plan.Job.Units;

    public double ThicknessMm => Layer.Planks.ThicknessMm;

    public ImmutableArray<EndRow> Ends { get; } =
    [.. Plank.Ends.Select(e => new EndRow(Layer, Plank, e, Plan.Job.Units))];

    public IEnumerable<EndRow> Facing(bool outboard) =>
        Ends.Where(e => e.Reading.FacesOutboard == outboard);

    /// <summary>Of several stretches at one end the one over the greatest width, by which the saw is set first; null where there is none.</summary>
    public EndRow? Main(bool outboard) => Facing(outboard).MaxBy(e => e.Reading.AcrossMm);

    /// <summary>What a list must not leave out, in sentences.</summary>
    public string Notes
    {
        get
        {
            List<string> notes =
            [
                Plank.IsRefused ? RefusedBend.ToDo + "." : "",
                PlankWords.DropIn(Plank, Unit),
            ];
            if (!Plank.StraightEdges)
            {
                notes.Add(PlankWords.Edges(Plank, Unit));
            }

            notes.AddRange(JointWords.Sentences(Plan, Plank));
            notes.AddRange(
                Plan.Findings.Where(f =>
                        string.Equals(f.Where, Plank.Id.ToString(), StringComparison.Ordinal)
                    )
                    .Select(f => f.Message)
            );
            return string.Join(" ", notes.Where(n => n.Length > 0));
        }
    }

    public static IEnumerable<PlankRow> All(BottomPlan plan) =>
        plan.AllPlankLayers.SelectMany(l =>
            l.Layer.Starboard.Concat(l.Layer.Port)
                .Select(plank => new PlankRow(l.Panel, l.Layer, plank))
        );
}

/// <summary>One end of a plank, read.</summary>
internal sealed record EndRow(PlankLayerPlan Layer, Plank Plank, PlankEnd End, LengthUnit Unit)
{
    public EndReading Reading { get; } = EndReading.Of(Plank, End, Layer.Planks.ThicknessMm);

    public string Bevel => EndWords.Bevel(Plank, End, Layer.Planks.ThicknessMm, Unit);
}
