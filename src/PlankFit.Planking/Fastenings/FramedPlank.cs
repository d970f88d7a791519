using PlankFit.Geometry;

namespace PlankFit.Planking;

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
        high;

    public FramedPlank(Plank plank)
    {
        Plank = plank;
        port = plank.Side == Side.Port;
        Net = Lines.Thinned([.. plank.FlatNet.Select(Turned)]);
        left = Net.Min(p => p.X);
        right = Net.Max(p => p.X);
        low = Net.Min(p => p.Y);
        high = Net.Max(p => p.Y);
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

    /// <summary>The net shape, thinned.</summary>
    public Vec2[] Net { get; }

    public (double Left, double Right, double Low, double High) Reach => (left, right, low, high);

    /// <summary>Into the starboard frame, and out of it again.</summary>
    public Vec2 Turned(Vec2 p) => port ? new(p.X, -p.Y) : p;

    public Vec2[] Turned(IEnumerable<Vec2> line) => [.. line.Select(Turned)];

    /// <summary>The surface's parameters of a place in the frame.</summary>
    public Uv On(Vec2 framed) => Plank.Map.On(Turned(framed));

    /// <summary>The place in the frame of a point of the layer's surface; null where it is further off the plank than asked for.</summary>
    public Vec2? Flat(Uv uv, Vec3 at, double withinMm)
    {
        int best = 0;
        double least = double.PositiveInfinity;
        for (int i = 0; i < axis.Length; i++)
        {
            double far = at.ChordTo(axis[i].At);
            (best, least) = far < least ? (i, far) : (best, least);
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
