using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// A flat plank seen in the starboard frame: a port plank with n turned over, so that both sides are fastened by the same steps. Takes its own (s, n) in and
/// gives them back by <see cref="Turned(Vec2)"/>.
/// </summary>
internal sealed class FramedPlank
{
    private const double AxisStepMm = 50;

    private readonly bool port;
    private readonly (double S, Vec3 At, Vec3 Along, Vec3 Left)[] axis;
    private readonly double left,
        right,
        low,
        high,
        farthest;

    public FramedPlank(Plank plank)
    {
        Plank = plank;
        port = plank.Side == Side.Port;
        Net = Lines.Thinned(FromTheLeft(TurnedAround(plank.FlatNet)));
        left = Net.Min(p => p.X);
        right = Net.Max(p => p.X);
        low = Net.Min(p => p.Y);
        high = Net.Max(p => p.Y);
        // Of any place on the plank from the nearest point of the line, generously.
        farthest =
            Math.Max(Math.Abs(low), Math.Abs(high)) + (2 * AxisStepMm) + (0.02 * (right - left));
        int steps = Math.Max(1, (int)Math.Ceiling((right - left) / AxisStepMm));
        axis =
        [
            .. Enumerable
                .Range(0, steps + 1)
                .Select(i =>
                {
                    var on = new Vec2(left + ((right - left) * i / steps), 0);
                    SurfacePoint under = plank.Map.Under(on);
                    Vec3 along = plank.Map.Grain(on);
                    return (on.X, under.P, along, under.Left(along));
                }),
        ];
    }

    public Plank Plank { get; }

    /// <summary>The plank of this name on the other side, of the same shape and in the same place, figure by figure.</summary>
    public bool IsTwinOf(FramedPlank other) =>
        Plank.Id == other.Plank.Id.Twin
        && Net.AsSpan().SequenceEqual(other.Net)
        && axis.AsSpan().SequenceEqual(other.axis);

    /// <summary>The net shape, thinned.</summary>
    public Vec2[] Net { get; }

    public (double Left, double Right, double Low, double High) Reach => (left, right, low, high);

    /// <summary>Into the starboard frame, and out of it again.</summary>
    public Vec2 Turned(Vec2 p) => port ? new(p.X, -p.Y) : p;

    /// <summary>
    /// A line or an outline that is laid round the plank: mirrored it runs the other way, so that it is turned end for end as well. What is done in its order is then done
    /// alike on both sides, to the last digit; else twins come out a hair apart, and a search may take the hair for a reason to go elsewhere.
    /// </summary>
    public Vec2[] TurnedAround(IEnumerable<Vec2> line)
    {
        Vec2[] turned = [.. line.Select(Turned)];
        if (port)
        {
            Array.Reverse(turned);
        }

        return turned;
    }

    /// <summary>A line that both sides have from inboard to outboard, as an edge is.</summary>
    public Vec2[] Turned(IEnumerable<Vec2> line) => [.. line.Select(Turned)];

    /// <summary>An outline begins at some corner, on either side at another: here at the one with the least s.</summary>
    private static Vec2[] FromTheLeft(Vec2[] outline)
    {
        int first = 0;
        for (int i = 1; i < outline.Length; i++)
        {
            if ((outline[i].X, outline[i].Y).CompareTo((outline[first].X, outline[first].Y)) < 0)
            {
                first = i;
            }
        }

        return [.. outline[first..], .. outline[..first]];
    }

    /// <summary>The place in the frame of a point of the layer's surface; null where it is further off the plank than asked for.</summary>
    public Vec2? Flat(Uv uv, Vec3 at, double withinMm)
    {
        // Abreast by the chord of the plank's own line, then downhill to the nearest of its points.
        Vec3 chord = axis[^1].At - axis[0].At;
        double part = (at - axis[0].At).Dot(chord) / chord.Dot(chord);
        int best = (int)Math.Clamp(Math.Round(part * (axis.Length - 1)), 0, axis.Length - 1);
        double least = at.ChordTo(axis[best].At);
        if (least > farthest + withinMm)
        {
            return null;
        }

        foreach (int way in new[] { -1, 1 })
        {
            while (
                best + way >= 0
                && best + way < axis.Length
                && at.ChordTo(axis[best + way].At) is var far
                && far < least
            )
            {
                (best, least) = (best + way, far);
            }
        }

        (double s, Vec3 from, Vec3 along, Vec3 across) = axis[best];
        var near = new Vec2(s + (at - from).Dot(along), (at - from).Dot(across));
        return
            near.X > left - withinMm
            && near.X < right + withinMm
            && near.Y > low - withinMm
            && near.Y < high + withinMm
            ? Turned(Plank.Map.Flat(uv, Turned(near)))
            : null;
    }
}
