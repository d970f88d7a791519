using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// Whether a layer's planks to port lie on the mirror image of what those to starboard lie on: figure by figure, not nearly. All is seen in the starboard frame, so that
/// the same figures are fastened by the same steps to the same places.
/// </summary>
internal static class TwinGrounds
{
    public static bool Are(LayerGround starboard, LayerGround port) =>
        ReferenceEquals(starboard.Below.Surface, port.Below.Surface)
        && starboard.Planks.Count == port.Planks.Count
        && starboard.Planks.Zip(port.Planks).All(p => Are(p.First, p.Second));

    private static bool Are(PlankGround one, PlankGround other) =>
        other.Framed.IsTwinOf(one.Framed)
        && one.Forward.AsSpan().SequenceEqual(other.Forward)
        && one.After.AsSpan().SequenceEqual(other.After)
        && Named(one.Ends, other.Ends)
        && Named(one.Open, other.Open)
        && Named(one.LinesBelow, other.LinesBelow)
        && one.Joints.Length == other.Joints.Length
        && one.Joints.Zip(other.Joints).All(j => Are(j.First, j.Second))
        && one.Timber.Length == other.Timber.Length
        && one.Timber.Zip(other.Timber).All(t => Are(t.First, t.Second));

    /// <summary>But for their names, which are of a plank on one side.</summary>
    private static bool Are(JointOnPlank one, JointOnPlank other) =>
        one.Outer.AsSpan().SequenceEqual(other.Outer)
        && one.Inner.AsSpan().SequenceEqual(other.Inner)
        && one.Area.AsSpan().SequenceEqual(other.Area);

    private static bool Are(TimberUnder one, TimberUnder other) =>
        (one.Name, one.WidthMm, one.IsThere, one.CarriesJoint, one.Middle?.LengthMm)
            == (
                other.Name,
                other.WidthMm,
                other.IsThere,
                other.CarriesJoint,
                other.Middle?.LengthMm
            )
        && (one.End(false), one.End(true)) == (other.End(false), other.End(true))
        && one.Cover.AsSpan().SequenceEqual(other.Cover)
        && one.One.AsSpan().SequenceEqual(other.One)
        && one.Other.AsSpan().SequenceEqual(other.Other);

    private static bool Named(
        IReadOnlyList<(string Name, Vec2[] Line)> one,
        IReadOnlyList<(string Name, Vec2[] Line)> other
    ) =>
        one.Count == other.Count
        && one.Zip(other)
            .All(l =>
                l.First.Name == l.Second.Name && l.First.Line.AsSpan().SequenceEqual(l.Second.Line)
            );
}
