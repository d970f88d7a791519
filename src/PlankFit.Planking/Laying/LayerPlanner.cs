using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Building;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>A layer laid out: its regions, seams and planks.</summary>
internal sealed record LaidLayer(
    PlankLayerSpec Spec,
    int Number,
    LayerFaces Faces,
    SeamRow Row,
    PlankLayerPlan Plan,
    double? LeastStaggerMm,
    Tracing Tracing
)
{
    /// <summary>All that it was laid by.</summary>
    public required LayerInputs From { get; init; }
}

/// <summary>From one layer's place in the stack to its planks.</summary>
internal static class LayerPlanner
{
    /// <summary>Error allowed a step of a geodesic, mm; keeps the end of 3 m within 0.001 mm.</summary>
    private const double TraceMm = 1e-5;

    private const double HairMm = 0.01;

    /// <summary>Rows laid anew because a plank came out wider than the stock.</summary>
    private const int MostAnew = 3;

    /// <summary>
    /// The layer, laid on from what is sawn and fitted. Where it cannot be laid on from the sawn planks, though it can without them, they are strays, and it is laid as
    /// if there were none: there is always a plan, and what does not belong to it is told. Where its lines cannot be followed at all the fault names the layer.
    /// </summary>
    public static LaidLayer Lay(LayerInputs of, CancellationToken stop)
    {
        LaidLayer On(PlankingJob from)
        {
            try
            {
                return Laid(of with { Job = from }, stop) with { From = of };
            }
            catch (Exception e) when (LostPlace.Is(e))
            {
                var lost = new LostPlace(of.Hull, from.Hull.Panel);
                throw new JobFaultException(
                    $"layer {of.Layer.Spec.Name}",
                    $"its planks cannot be followed over the whole {from.Hull.Panel.Name}: {lost.Told(e)}; {lost.Remedy(e)}"
                );
            }
        }

        PlankingJob job = of.Job;
        SawnPlank[] cut = of.AsDrawn is null ? [] : CutOf(job, of.Number, of.Side);
        if (cut.Length == 0)
        {
            return On(job);
        }

        try
        {
            return On(job);
        }
        catch (JobFaultException e) when (!e.IsOfTheRecord)
        {
            LaidLayer without = On(
                job with
                {
                    AsBuilt = job.AsBuilt with { Sawn = job.AsBuilt.Sawn.RemoveRange(cut) },
                }
            );
            ImmutableDictionary<PlankId, Func<LengthUnit, string>> strays =
                cut.ToImmutableDictionary<SawnPlank, PlankId, Func<LengthUnit, string>>(
                    c => c.Id,
                    _ =>
                        u =>
                            $"the layer cannot be laid on from it as the job now is ({e.Told(u).TrimEnd('.')})"
                );
            return without with
            {
                Row = without.Row with { Strays = strays },
                Plan = without.Plan with { Strays = strays },
            };
        }
    }

    /// <summary>The part of its middle that a layer covers, and how lines are traced on it.</summary>
    public static (LayerRegion Region, Tracing Tracing) Ground(
        SideGround ground,
        StackedLayer stacked,
        PlankLayerSpec spec
    ) =>
        (
            LayerRegion.On(
                ground.Hull.Surface,
                stacked.MiddleMm,
                ground.Keel.SideOf(spec),
                PastMm(spec),
                ground.Job.Hull.Panel
            ),
            TracingOf(spec)
        );

    /// <summary>How far past the edges of the panel lines are followed, mm.</summary>
    internal static double PastMm(PlankLayerSpec spec) => spec.WidthMm + 150;

    internal static Tracing TracingOf(PlankLayerSpec spec) => new(TraceMm, PastMm(spec));

    private static LaidLayer Laid(LayerInputs of, CancellationToken stop)
    {
        (PlankLayerSpec spec, StackedLayer stacked, int number) = (of.Planks, of.Layer, of.Number);
        (PlankingJob job, HullSurface hull) = (of.Job, of.Hull);
        (LaidLayer? below, LaidLayer? asDrawn) = (of.Below, of.AsDrawn);
        double past = PastMm(spec);
        KeelSideFace keelSide = of.Keel.SideOf(spec);
        Tracing tracing = TracingOf(spec);
        LayerRegion On(double z) => LayerRegion.On(hull.Surface, z, keelSide, past, job.Hull.Panel);
        var faces = new LayerFaces(On(stacked.MiddleMm), On(stacked.OuterMm), On(stacked.InnerMm));
        LayerRegion region = faces.Middle;
        double baseShift =
            asDrawn is not null ? asDrawn.Plan.MasterShiftMm
            : spec.Stagger is { } part && below is not null
                ? Stagger.Shift(below.Faces.Middle, below.Row, region, spec, part, tracing)
            : 0;
        bool mayShift = asDrawn is null && (spec.Stagger is null || below is null);
        SeamRow row = CornerShift.Choose(region, spec, baseShift, mayShift, tracing, stop);
        if (asDrawn is not null)
        {
            row = Standing(of, spec, faces, row, asDrawn, tracing);
        }

        var builder = new PlankBuilder(
            faces,
            spec,
            number,
            job.Ends with
            {
                RunOut = of.Keel.RunOutUnder(spec),
            },
            BendJudge.Of(job, spec),
            keelSide,
            tracing,
            new(hull, job.Hull.Panel)
        );
        BuiltPlank[] built = Built(builder, row, stop);

        // Widths are held square to the seams; square to a plank's own line its outermost points may stand a trifle further apart, and the stock's edges are there.
        PlankLayerSpec narrower = spec;
        for (int anew = 0; anew < MostAnew; anew++)
        {
            double lacks = Lacks(built, spec, row.Held);
            if (lacks == 0)
            {
                break;
            }

            double left = narrower.WidthMm - lacks - StockRoom.SpareMm;
            if (left <= 0)
            {
                throw new JobFaultException(
                    $"layer {spec.Name}",
                    u =>
                        $"a plank of it would be {LengthText.ForPaper(lacks, u, RoundTo.Up)} wider than its stock, width = {LengthText.ForPaper(spec.WidthMm, u)}, however narrow it is laid; look at the offsets where it lies, or take another angle or master"
                );
            }

            narrower = narrower with { WidthMm = left };
            SeamRow again = SeamFamily.Lay(region, narrower, baseShift + row.ShiftMm, tracing) with
            {
                ShiftMm = row.ShiftMm,
            };
            // Where what they are narrower by leaves room for one more plank, that is a sliver, and the corners are chosen anew.
            row =
                row.Held ? Standing(of, narrower, faces, again, asDrawn!, tracing)
                : again.Planks == row.Planks ? again
                : CornerShift.Choose(region, narrower, baseShift, mayShift, tracing, stop);
            built = Built(builder, row, stop);
        }

        ImmutableArray<Plank> starboard = SeamGaps.Judge(built, spec.GapMm);
        var plan = new PlankLayerPlan(
            number,
            spec,
            new(stacked.MiddleMm, region.Surface),
            RegionArea.Of(region),
            new(
                row.Master + row.FirstNumber,
                baseShift + row.ShiftMm,
                MasterLine.AskedX(region, spec)
            ),
            RegionArea.Outline(region, 120),
            starboard,
            [.. starboard.Select(PortTwin.Of)]
        )
        {
            Panel = job.Hull.Panel,
            Checks = TapeReadings.Of(faces, hull, row, starboard),
            Strays = row.Strays,
        };
        double? least =
            below is not null && spec.Stagger is not null
                ? Stagger.LeastDistance(below.Faces.Middle, below.Row, region, row, tracing)?.Mm
                : null;
        return new(spec, number, faces, row, plan, least, tracing) { From = of };
    }

    /// <summary>By how much the widest of the planks is wider than the stock. Of a row that sawn or measured planks hold, more than a hair is what these leave between them, which no other width changes.</summary>
    private static double Lacks(BuiltPlank[] built, PlankLayerSpec spec, bool held) =>
        built
            .Select(b => StockRoom.LacksMm(b.Plank.FlatNet, spec.WidthMm))
            .Where(l => !held || l <= HairMm)
            .Max(l => (double?)l)
        ?? 0;

    private static BuiltPlank[] Built(PlankBuilder builder, SeamRow row, CancellationToken stop)
    {
        var built = new BuiltPlank[row.Planks];
        var options = new ParallelOptions { CancellationToken = stop };
        try
        {
            Parallel.For(0, row.Planks, options, i => built[i] = builder.Build(row, i));
        }
        catch (AggregateException e)
        {
            // The planks are worked out side by side; the first one's reason is the one to tell.
            ExceptionDispatchInfo.Throw(
                e.InnerExceptions.OfType<JobFaultException>().FirstOrDefault()
                    ?? e.InnerExceptions[0]
            );
        }

        return built;
    }

    /// <summary>Planks keep the numbers that they were drawn with; those that are fitted lie where they were measured, and the rest goes on from them.</summary>
    private static SeamRow Standing(
        LayerInputs of,
        PlankLayerSpec spec,
        LayerFaces faces,
        SeamRow row,
        LaidLayer asDrawn,
        Tracing tracing
    )
    {
        (int number, Side side) = (of.Number, of.Side);
        PlankingJob job = of.Job;
        SawnPlank[] cut = CutOf(job, number, side);
        int[] fitted =
        [
            .. job
                .AsBuilt.Fitted.Where(p => p.Side == side && p.Layer == number)
                .Select(p => p.Number),
        ];
        MeasuredSeam[] measured =
        [
            .. job.AsBuilt.Seams.Where(m => m.Side == side && m.PlankId.Layer == number),
        ];
        if (cut.Length + fitted.Length + measured.Length == 0)
        {
            // Nothing of this layer is sawn or fitted: its planks are counted afresh.
            return row;
        }

        row = row with { FirstNumber = asDrawn.Row.Master + asDrawn.Row.FirstNumber - row.Master };
        row = SawnSeams.Row(faces.Middle, spec, row, cut, tracing);
        ImmutableDictionary<PlankId, Func<LengthUnit, string>> strays = row.Strays;
        CheckThere(spec, row, fitted);
        if (measured.Length > 0)
        {
            row = FittedSeams.Relaid(
                faces,
                spec,
                row,
                measured,
                fitted.Concat(cut.Select(c => c.Number)).ToHashSet(),
                SeamCreeps.From(job, of.Hull),
                tracing
            );
        }

        return row with
        {
            Fitted = row.Fitted.Union(fitted.Select(n => n - row.FirstNumber)),
            Held = true,
            Strays = strays,
        };
    }

    /// <summary>The sawn planks of a layer and side.</summary>
    public static SawnPlank[] CutOf(PlankingJob job, int layer, Side side) =>
        [.. job.AsBuilt.Sawn.Where(c => c.Side == side && c.Layer == layer)];

    private static void CheckThere(PlankLayerSpec spec, SeamRow row, int[] fitted)
    {
        foreach (int number in fitted)
        {
            if (number < row.FirstNumber || number >= row.FirstNumber + row.Planks)
            {
                throw new JobFaultException(
                    "[as-built] fitted",
                    $"layer {spec.Name} has no plank {number}: it runs from {row.FirstNumber} to {row.FirstNumber + row.Planks - 1}"
                );
            }
        }
    }
}
