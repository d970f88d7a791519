using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Trust;

/// <summary>A layer as it was laid on the table's hull, to be laid by the same choices on others.</summary>
internal sealed class HeldLayer
{
    private readonly int index;
    private readonly HeldRow row;
    private readonly PlankMeasure?[] measures;
    private readonly Tracing tracing;
    private readonly double pastMm;

    /// <param name="laid">On the hull as drawn.</param>
    /// <param name="index">Of the layer in the job.</param>
    public HeldLayer(LaidLayer laid, int index)
    {
        this.index = index;
        (tracing, pastMm) = (laid.Tracing, LayerPlanner.PastMm(laid.Spec));
        row = new(laid.Spec, laid.Row, laid.Faces.Inner, laid.From.Hull, tracing);
        Planks = [.. laid.Plan.Starboard.Select(p => p.Id)];
        Seam?[] seams = [.. laid.Row.Seams];
        var ground = new Ground(
            laid.Spec,
            laid.Faces.Middle,
            laid.Faces.Inner,
            laid.From.Keel.SideOf(laid.Spec),
            row.Hook(laid.From.Hull).U,
            seams,
            tracing
        );
        measures = [.. ground.OwnLines(Planks.Length).Select(PlankMeasure.Of)];
    }

    /// <summary>Of starboard, in order.</summary>
    public ImmutableArray<PlankId> Planks { get; }

    /// <summary>How many numbers it has.</summary>
    public int Count => Planks.Length * PlankMeasure.Count;

    public IEnumerable<SureNumber> Numbers =>
        Planks.SelectMany(p =>
            Enumerable.Range(0, PlankMeasure.Count).Select(k => new SureNumber(p, (NumberKind)k))
        );

    /// <summary>The numbers of all its planks on another hull.</summary>
    /// <param name="job">With the hull's table; layers may be thicker or wider than they were.</param>
    public void Into(Span<double> numbers, PlankingJob job, HullSurface hull, BuiltKeel keel)
    {
        numbers.Fill(double.NaN);
        if (Tried.Or(() => On(job, hull, keel)) is not { } ground)
        {
            return;
        }

        Seam?[] own = ground.OwnLines(measures.Length);
        for (int i = 0; i < measures.Length; i++)
        {
            measures[i]
                ?.Into(
                    numbers.Slice(i * PlankMeasure.Count, PlankMeasure.Count),
                    ground,
                    i,
                    own[i]
                );
        }
    }

    /// <summary>The lengths of all its planks on another hull, whichever edges their ends meet there; NaN for one that does not lie on it.</summary>
    public void LengthsInto(Span<double> lengths, PlankingJob job, HullSurface hull, BuiltKeel keel)
    {
        lengths.Fill(double.NaN);
        Seam?[] own = Tried.Or(() => On(job, hull, keel))?.Lines(lengths.Length) ?? [];
        for (int i = 0; i < own.Length; i++)
        {
            lengths[i] = own[i]?.LengthMm ?? double.NaN;
        }
    }

    private Ground On(PlankingJob job, HullSurface hull, BuiltKeel keel)
    {
        StackedLayer stacked = Stack.Of(job).Layers[index];
        var spec = (PlankLayerSpec)stacked.Spec;
        KeelSideFace side = keel.SideOf(spec);
        LayerRegion Face(double z) => LayerRegion.On(hull.Surface, z, side, pastMm, job.Hull.Panel);
        LayerRegion middle = Face(stacked.MiddleMm),
            inner = Face(stacked.InnerMm);
        return new(
            spec,
            middle,
            inner,
            side,
            row.Hook(hull).U,
            row.On(middle, inner, hull, spec.WidthMm),
            tracing
        );
    }
}
