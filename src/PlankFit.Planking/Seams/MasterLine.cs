using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Seams;

/// <summary>The master plank's own line: it crosses mid-bottom at the x asked for and meets the keel at the angle asked for.</summary>
internal static class MasterLine
{
    /// <summary>Where the job has it cross the middle of the panel, x in mm; halfway along that where the job is silent.</summary>
    public static double AskedX(LayerRegion region, PlankLayerSpec spec)
    {
        (double from, double to) = Reach(region);
        return spec.MasterMm ?? ((from + to) / 2);
    }

    private static (double From, double To) Reach(LayerRegion region) =>
        (
            region.PointAt(new(region.UFrom, region.UpperV(region.UFrom) / 2)).X,
            region.PointAt(new(region.UTo, region.UpperV(region.UTo) / 2)).X
        );

    public static Seam Find(
        LayerRegion region,
        PlankLayerSpec spec,
        double shiftMm,
        Tracing tracing
    )
    {
        (double keelX0, double keelX1) = Reach(region);
        double x = AskedX(region, spec) + shiftMm;
        Uv middle =
            region.MiddleAt(x)
            ?? throw new JobFaultException(
                $"layer {spec.Name}",
                u =>
                    $"master = {LengthText.ForPaper(x, u)} is off the {region.Panel.Name}, whose middle runs from x = {LengthText.ForPaper(keelX0, u)} to {LengthText.ForPaper(keelX1, u)}; give a place between"
            );
        SurfacePoint at = region.Surface.At(middle.U, middle.V);
        Vec3 aft = at.UnitTangent(Vec3.UnitX),
            outboard = at.Left(aft);
        outboard = outboard.Dot(at.Dv) > 0 ? outboard : -outboard;
        Vec3 run = spec.Heads == Heads.Aft ? aft : -aft;

        Geodesic Through(double degrees)
        {
            double a = degrees * Math.PI / 180;
            return tracing.Line(region, middle, (Math.Cos(a) * run) + (Math.Sin(a) * outboard));
        }

        // The angle is wanted at the keel and the line is held at mid-bottom: a scalar equation, nearly linear.
        double Miss(double degrees)
        {
            Geodesic line = Through(degrees);
            double s = KeelCrossing(region, line, spec, x);
            return KeelAngle.Of(region, line.At(s), spec.Heads) - spec.AngleDegrees;
        }

        double low = spec.AngleDegrees,
            missLow = Miss(low),
            high = low - missLow,
            root = low;
        for (int i = 0; i < 20 && Math.Abs(missLow) > 1e-10; i++)
        {
            double missHigh = Miss(high);
            root = high - (missHigh * (high - low) / (missHigh - missLow));
            (low, missLow, high) = (high, missHigh, root);
        }

        Seam found =
            Crossings.Find(region, Through(root))
            ?? throw new JobFaultException(
                $"layer {spec.Name}",
                $"the master plank's line passes the {region.Panel.Name} by"
            );
        if (found.In.Edge != PanelEdge.Lower)
        {
            throw new JobFaultException(
                $"layer {spec.Name}",
                u =>
                    $"the master plank's line, crossing mid-{region.Panel.Name} at x = {LengthText.ForPaper(x, u)} at {NumberText.Trimmed(spec.AngleDegrees, 1)} degrees, meets the {region.Panel.WordOf(found.In.Edge)} before the {region.Panel.WordOf(PanelEdge.Lower)}; move `master` or change `angle`"
            );
        }

        if (found.Out.Edge != PanelEdge.Upper)
        {
            throw new JobFaultException(
                $"layer {spec.Name}",
                u =>
                    $"a plank at angle = {NumberText.Trimmed(spec.AngleDegrees, 1)} degrees never reaches the {region.Panel.WordOf(PanelEdge.Upper)}: from mid-{region.Panel.Name} at x = {LengthText.ForPaper(x, u)} it runs out at the {region.Panel.WordOf(found.Out.Edge)}; give a larger `angle` or move `master`"
            );
        }

        return found;
    }

    private static double KeelCrossing(
        LayerRegion region,
        Geodesic line,
        PlankLayerSpec spec,
        double x
    )
    {
        double Level(Uv uv) => uv.V - region.LowerV(uv.U);
        double from = 0,
            to = line.From;
        for (int i = 1; i <= 40; i++)
        {
            double s = to * i / 40;
            if (Level(line.UvAt(s)) <= 0)
            {
                return line.Crossing(Level, s, from);
            }

            from = s;
        }

        throw new JobFaultException(
            $"layer {spec.Name}",
            u =>
                $"the master plank's line, crossing mid-{region.Panel.Name} at x = {LengthText.ForPaper(x, u)} at {NumberText.Trimmed(spec.AngleDegrees, 1)} degrees, runs out forward or aft before it meets the {region.Panel.WordOf(PanelEdge.Lower)}; move `master` or give a larger `angle`"
        );
    }
}
