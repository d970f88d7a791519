using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>A layer laid out: its regions, seams and planks.</summary>
internal sealed record LaidLayer(
    PlankLayerSpec Spec,
    int Number,
    LayerFaces Faces,
    SeamRow Row,
    PlankLayerPlan Plan,
    double? LeastStaggerMm
);

/// <summary>From one layer's place in the stack to its planks.</summary>
internal static class LayerPlanner
{
    /// <summary>Error allowed a step of a geodesic, mm; keeps the end of 3 m within 0.001 mm.</summary>
    private const double TraceMm = 1e-5;

    public static LaidLayer Lay(
        Job job,
        HullSurface hull,
        PlankLayerSpec spec,
        int number,
        double offsetMm,
        Side side,
        LaidLayer? below,
        CancellationToken stop
    )
    {
        double past = spec.WidthMm + 150;
        KeelSideFace keelSide = KeelSides.Of(job, hull, spec, side);
        var tracing = new Tracing(TraceMm, past);
        double half = spec.ThicknessMm / 2;
        LayerRegion On(double z) => LayerRegion.On(hull.Surface, z, keelSide, past);
        var faces = new LayerFaces(On(offsetMm), On(offsetMm + half), On(offsetMm - half));
        LayerRegion region = faces.Middle;
        double baseShift =
            spec.Stagger is { } part && below is not null
                ? Stagger.Shift(below.Faces.Middle, below.Row, region, spec, part, tracing)
                : 0;
        bool mayShift = spec.Stagger is null || below is null;
        SeamRow row = CornerShift.Choose(region, spec, baseShift, mayShift, tracing, stop);
        var builder = new PlankBuilder(
            faces,
            spec,
            number,
            job.Ends with
            {
                Fade = KeelFades.Under(job, hull, spec, side),
            },
            job.Limits,
            keelSide,
            tracing
        );
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

        ImmutableArray<Plank> starboard = SeamGaps.Judge(built, spec.GapMm);
        var plan = new PlankLayerPlan(
            number,
            spec,
            offsetMm,
            RegionArea.Of(region),
            baseShift + row.ShiftMm,
            row.Master + 1,
            region.Surface,
            RegionArea.Outline(region, 120),
            starboard,
            [.. starboard.Select(PortTwin.Of)]
        )
        {
            Checks = TapeReadings.Of(faces, hull, row, starboard),
        };
        double? least =
            below is not null && spec.Stagger is not null
                ? Stagger.LeastDistance(below.Faces.Middle, below.Row, region, row, tracing)?.Mm
                : null;
        return new(spec, number, faces, row, plan, least);
    }
}
