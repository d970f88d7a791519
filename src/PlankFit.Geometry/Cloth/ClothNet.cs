using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>A cloth that is laid on a ground: where each of its points lies, and how far it is sheared there.</summary>
public sealed class ClothNet
{
    private static readonly Knot One = new(1, 1),
        Right = new(1, 0),
        Up = new(0, 1);

    private readonly ClothLattice net;

    internal ClothNet(
        ClothGround ground,
        ClothWeave weave,
        double meshMm,
        ClothLattice net,
        ClothStop? stop
    )
    {
        Ground = ground;
        Weave = weave;
        MeshMm = meshMm;
        this.net = net;
        Stop = stop;
        Meshes = [.. All()];
    }

    public ClothGround Ground { get; }

    public ClothWeave Weave { get; }

    public double MeshMm { get; }

    /// <summary>Where it could not be carried on, the first of such places; null where it covers its ground.</summary>
    public ClothStop? Stop { get; }

    /// <summary>Crossings that were laid.</summary>
    public int Crossings => net.Count;

    /// <summary>All its meshes, those just past the ground's edges among them.</summary>
    public ImmutableArray<ClothMesh> Meshes { get; }

    /// <summary>Those whose middle lies on the ground.</summary>
    public IEnumerable<ClothMesh> OnGround => Meshes.Where(m => Ground.OutMm(m.At) <= 0);

    /// <summary>The place on the cloth laid flat, p along the roll and q across, of a place on the ground; null where the net does not reach it.</summary>
    /// <param name="near">A flat place near it, to look from; null for none.</param>
    /// <remarks>Within a mesh straight between its corners: second order in its size.</remarks>
    public Vec2? FlatOf(Uv at, Vec2? near = null)
    {
        if (near is { } hint && Walk(at, KnotAt(hint)) is { } found)
        {
            return found;
        }

        Knot nearest = default;
        double least = double.PositiveInfinity;
        SurfacePoint p = Ground.Surface.At(at.U, at.V);
        foreach (Knot knot in net.Knots())
        {
            double far = (net[knot].P - p.P).NormSquared;
            if (far < least)
            {
                (least, nearest) = (far, knot);
            }
        }

        // Any of the meshes about it, some of which may not be there.
        return Walk(at, nearest)
            ?? Walk(at, nearest - Right)
            ?? Walk(at, nearest - Up)
            ?? Walk(at, nearest - One);
    }

    /// <summary>The place on the ground of a place on the cloth laid flat; null where the net has none.</summary>
    public Uv? GroundOf(Vec2 flat)
    {
        (double first, double second) = Weave.Steps(flat / MeshMm);
        Knot knot = new((int)Math.Floor(first), (int)Math.Floor(second));
        if (Corners(knot) is not { } corners)
        {
            return null;
        }

        return Between(corners, first - knot.First, second - knot.Second);
    }

    /// <summary>The curvature of the ground along the threads of both sets in a mesh, 1/mm: more than nought where they run over a hollow, seen from the side of the ground's normal.</summary>
    /// <param name="middle">Of the mesh, as <see cref="Meshes"/> has it.</param>
    public (double First, double Second) ThreadCurvatures(Vec2 middle)
    {
        if (Corners(KnotAt(middle)) is not var (a, b, c, d))
        {
            return (0, 0);
        }

        Uv at = 0.25 * (a.At + b.At + c.At + d.At);
        SurfacePoint p = Ground.Surface.At(at.U, at.V);
        Vec3 first = p.UnitTangent(b.P - a.P + d.P - c.P),
            second = p.UnitTangent(c.P - a.P + d.P - b.P);
        return (p.SecondForm(first, first), p.SecondForm(second, second));
    }

    /// <summary>Shear at a crossing, the mean of the four meshes about it, degrees; null where one of them is not there.</summary>
    public double? ShearAtCrossing(int first, int second)
    {
        double sum = 0;
        for (int i = -1; i <= 0; i++)
        {
            for (int j = -1; j <= 0; j++)
            {
                if (Mesh(new(first + i, second + j)) is not { } mesh)
                {
                    return null;
                }

                sum += mesh.ShearDegrees / 4;
            }
        }

        return sum;
    }

    /// <summary>Shear at a flat place, between the middles of the four meshes about it, and its two parts; null where one of them is not there.</summary>
    public ClothShear? ShearAt(Vec2 flat)
    {
        (double first, double second) = Weave.Steps(flat / MeshMm);
        Knot knot = new((int)Math.Floor(first - 0.5), (int)Math.Floor(second - 0.5));
        if (
            Mesh(knot) is not { } a
            || Mesh(knot + Right) is not { } b
            || Mesh(knot + Up) is not { } c
            || Mesh(knot + One) is not { } d
        )
        {
            return null;
        }

        double x = first - 0.5 - knot.First,
            y = second - 0.5 - knot.Second;
        double Of(Func<ClothMesh, double> value) =>
            ((1 - x) * (1 - y) * value(a))
            + (x * (1 - y) * value(b))
            + ((1 - x) * y * value(c))
            + (x * y * value(d));
        return new(Of(m => m.ShearDegrees), Of(m => m.TurningDegrees), Of(m => m.BulgeDegrees));
    }

    private Knot KnotAt(Vec2 flat)
    {
        (double first, double second) = Weave.Steps(flat / MeshMm);
        return new((int)Math.Floor(first), (int)Math.Floor(second));
    }

    private IEnumerable<ClothMesh> All()
    {
        foreach (Knot knot in net.Knots())
        {
            if (Mesh(knot) is { } mesh)
            {
                yield return mesh;
            }
        }
    }

    private ClothMesh? Mesh(Knot knot)
    {
        if (Corners(knot) is not var (a, b, c, d))
        {
            return null;
        }

        double along = a.P.ChordTo(d.P),
            across = b.P.ChordTo(c.P);
        double shear = (2 * Math.Atan2(across, along)) - (Math.PI / 2);
        Uv middle = 0.25 * (a.At + b.At + c.At + d.At);
        const double degrees = 180 / Math.PI;
        return new(
            MeshMm * Weave.At(knot.First + 0.5, knot.Second + 0.5),
            middle,
            0.25 * (a.P + b.P + c.P + d.P),
            shear * degrees,
            degrees * (a.Turning + b.Turning + c.Turning + d.Turning) / 4,
            degrees * (a.Bulge + b.Bulge + c.Bulge + d.Bulge) / 4
        );
    }

    private (ClothNode A, ClothNode B, ClothNode C, ClothNode D)? Corners(Knot knot) =>
        net.Find(knot) is { } a
        && net.Find(knot + Right) is { } b
        && net.Find(knot + Up) is { } c
        && net.Find(knot + One) is { } d
            ? (a, b, c, d)
            : null;

    private static Uv Between(
        (ClothNode A, ClothNode B, ClothNode C, ClothNode D) corners,
        double x,
        double y
    ) =>
        ((1 - x) * (1 - y) * corners.A.At)
        + (x * (1 - y) * corners.B.At)
        + ((1 - x) * y * corners.C.At)
        + (x * y * corners.D.At);

    /// <summary>From mesh to mesh towards a place.</summary>
    private Vec2? Walk(Uv at, Knot from)
    {
        const int mostMoves = 400,
            farthest = 24;
        const double slack = 1e-9,
            past = 0.5;
        Knot knot = from,
            lastKnot = from;
        (double X, double Y)? before = null;
        for (int i = 0; i < mostMoves; i++)
        {
            if (Corners(knot) is not { } corners)
            {
                // Off the net: where the mesh before was left by no more than half a mesh, it serves.
                return before is { } b && Near(b.X, past) && Near(b.Y, past)
                    ? MeshMm * Weave.At(lastKnot.First + b.X, lastKnot.Second + b.Y)
                    : null;
            }

            (double x, double y) = Inverted(corners, at);
            if (Near(x, slack) && Near(y, slack))
            {
                return MeshMm * Weave.At(knot.First + x, knot.Second + y);
            }

            if (!double.IsFinite(x) || !double.IsFinite(y))
            {
                return null;
            }

            before = (x, y);
            lastKnot = knot;
            knot += new Knot(
                Math.Clamp((int)Math.Floor(x), -farthest, farthest),
                Math.Clamp((int)Math.Floor(y), -farthest, farthest)
            );
        }

        return null;
    }

    private static bool Near(double part, double slack) => part >= -slack && part <= 1 + slack;

    /// <summary>Where in a mesh a place lies, in parts of its threads, by Newton's method.</summary>
    private static (double X, double Y) Inverted(
        (ClothNode A, ClothNode B, ClothNode C, ClothNode D) corners,
        Uv at
    )
    {
        (ClothNode a, ClothNode b, ClothNode c, ClothNode d) = corners;
        Uv right = b.At - a.At,
            up = c.At - a.At,
            twist = d.At - b.At - c.At + a.At;
        double x = 0.5,
            y = 0.5;
        for (int i = 0; i < 5; i++)
        {
            Uv miss = at - a.At - (x * right) - (y * up) - (x * y * twist),
                dx = right + (y * twist),
                dy = up + (x * twist);
            double det = (dx.U * dy.V) - (dx.V * dy.U);
            x += ((miss.U * dy.V) - (miss.V * dy.U)) / det;
            y += ((miss.V * dx.U) - (miss.U * dx.V)) / det;
        }

        return (x, y);
    }
}
