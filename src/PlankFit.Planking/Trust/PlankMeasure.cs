using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Trust;

/// <summary>
/// The numbers of one plank as it lies on a hull, in the order of <see cref="NumberKind"/>: NaN for one that it does not have there, or not at the edge at which it has
/// it on the table's hull.
/// </summary>
internal sealed class PlankMeasure
{
    /// <summary>How many there are.</summary>
    public const int Count = (int)NumberKind.Diagonal + 1;

    private readonly PanelEdge inEdge,
        outEdge;

    private PlankMeasure(Seam own) => (inEdge, outEdge) = (own.In.Edge, own.Out.Edge);

    /// <summary>What is kept of a plank on the table's hull: which edges its ends meet.</summary>
    public static PlankMeasure? Of(Seam? own) => own is null ? null : new(own);

    /// <param name="plank">Its place in the row.</param>
    /// <param name="own">Its own line there; null where it has none.</param>
    public void Into(Span<double> numbers, Ground ground, int plank, Seam? own)
    {
        TapedAt? forward = ground.Taped(plank - 1),
            after = ground.Taped(plank);
        Set(numbers, NumberKind.ForwardKeelMark, forward?.KeelMm);
        Set(numbers, NumberKind.ForwardChineMark, forward?.ChineMm);
        Set(numbers, NumberKind.ForwardSeam, forward?.LengthMm);
        Set(numbers, NumberKind.AfterKeelMark, after?.KeelMm);
        Set(numbers, NumberKind.AfterChineMark, after?.ChineMm);
        Set(numbers, NumberKind.AfterSeam, after?.LengthMm);
        if (own is null || own.In.Edge != inEdge || own.Out.Edge != outEdge)
        {
            return;
        }

        // From its middle; which of the two ends is out is told by the cells that it is out by.
        if (inEdge == PanelEdge.Lower)
        {
            Set(numbers, NumberKind.Inboard, own.LengthMm / 2);
            Set(numbers, NumberKind.Outboard, own.LengthMm / 2);
        }

        Set(numbers, NumberKind.Length, own.LengthMm);
        Seam? ahead = ground.Seam(plank - 1),
            behind = ground.Seam(plank);
        Set(numbers, NumberKind.InboardAngle, Angle(ground, own, own.In, ahead?.In, behind?.In));
        Set(
            numbers,
            NumberKind.OutboardAngle,
            Angle(ground, own, own.Out, ahead?.Out, behind?.Out)
        );
        if (inEdge == PanelEdge.Lower && !ground.KeelSide.SquareToPlank)
        {
            SurfacePoint at = ground.Middle.Surface.At(own.In.Uv.U, own.In.Uv.V);
            double sine = ground.KeelSide.Normal(at.P, own.In.Uv.U).Dot(at.Normal);
            Set(numbers, NumberKind.Bevel, Degrees(Math.Asin(Math.Clamp(sine, -1, 1))));
        }

        if (
            ahead is { In.Edge: PanelEdge.Lower, Out.Edge: PanelEdge.Upper }
            && behind is { In.Edge: PanelEdge.Lower, Out.Edge: PanelEdge.Upper }
        )
        {
            Set(
                numbers,
                NumberKind.Diagonal,
                Tried.Or(() => (object?)TapeReadings.Diagonal(ground.Inner, ahead, behind))
                    as double?
            );
        }
    }

    /// <summary>Between the plank's own line and the chord from corner to corner of an end, degrees; null where the corners are not on one edge.</summary>
    private static double? Angle(
        Ground ground,
        Seam own,
        EdgeCrossing end,
        EdgeCrossing? forward,
        EdgeCrossing? after
    )
    {
        if (forward?.Edge != end.Edge || after?.Edge != end.Edge)
        {
            return null;
        }

        SurfacePoint at = ground.Middle.Surface.At(end.Uv.U, end.Uv.V);
        Vec3 tangent = own.Line.At(end.S).Tangent,
            left = at.Left(tangent),
            chord = ground.Middle.PointAt(after.Value.Uv) - ground.Middle.PointAt(forward.Value.Uv);
        return Degrees(Math.Atan2(chord.Dot(left), chord.Dot(tangent)));
    }

    private static double Degrees(double radians) => radians * 180 / Math.PI;

    private static void Set(Span<double> numbers, NumberKind kind, double? value) =>
        numbers[(int)kind] = value ?? double.NaN;
}
