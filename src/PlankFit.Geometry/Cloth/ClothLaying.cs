using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>
/// Laying cloth as a net of threads of fixed length that turn where they cross and slip nowhere (a Chebyshev net: w_uv = −K sin w for the angle w between its
/// threads; Chebyshev 1878, from memory). From a first line or a point the net is fixed, mesh by mesh.
/// </summary>
public static class ClothLaying
{
    private static readonly Knot First = new(1, 0),
        Second = new(0, 1),
        Back = new(-1, 0),
        Down = new(0, -1);

    /// <summary>Meshes that a first line is carried past the ground's ends.</summary>
    public const int PastMeshes = 3;

    /// <summary>A cloth whose threads run at 45 degrees to its roll, laid without shear along a line, q nought; stroked out both ways from there.</summary>
    /// <param name="left">1 where q grows to the left of the line as p grows, seen from the side of the ground's normal; -1 where to the right.</param>
    /// <param name="meshMm">Between crossings along a thread. Places and shears are second order in it.</param>
    public static ClothNet Along(ClothGround ground, LaidLine line, int left, double meshMm)
    {
        double step = meshMm * Math.Sqrt(2);
        var net = new ClothLattice();
        (Uv[] places, int before) = line.Stepped(ground.Surface, step);
        double[] turned = Turned(ground, places);
        for (int i = 0; i < places.Length; i++)
        {
            Put(net, new(i - before, i - before), ground, places[i], 0);
        }

        var march = new ClothMarch(ground, net, meshMm);
        FirstRow Row(int side) =>
            new(side, (a, b) => side * (turned[b.First + before] - turned[a.First + before]));
        var start = new Knot(-before, -before);
        int count = places.Length;
        march.Go(start, count, Second, Back, Row(left));
        ClothStop? stop = march.Stop;
        march = new ClothMarch(ground, net, meshMm);
        march.Go(start, count, First, Down, Row(-left));
        return new(ground, ClothWeave.Diagonal, meshMm, net, stop ?? march.Stop);
    }

    /// <summary>
    /// A cloth of any weave pinned along one thread and, from a place on it, along a straight thread square to it. Where the first thread is a straight course too,
    /// that is a cloth pinned at a point.
    /// </summary>
    /// <param name="first">The first thread, of the first set; the second leaves it at s = 0.</param>
    /// <param name="left">As in <see cref="Along"/>, of the second thread against the first.</param>
    public static ClothNet FromThread(
        ClothGround ground,
        ClothWeave weave,
        LaidLine first,
        int left,
        double meshMm
    )
    {
        var net = new ClothLattice();
        (Uv[] places, int before) = first.Stepped(ground.Surface, meshMm);
        double[] turned = Turned(ground, places);
        for (int i = 0; i < places.Length; i++)
        {
            // Threads of the second set keep their direction along the first thread, which turns under them.
            Put(net, new(i - before, 0), ground, places[i], -left * (turned[i] - turned[before]));
        }

        Uv at = first.At(0);
        SurfacePoint p = ground.Surface.At(at.U, at.V);
        double near = Math.Min(1, Math.Min(first.To, -first.From) / 2);
        Vec3 along = Point(ground, first.At(near)) - Point(ground, first.At(-near));
        var across = LaidLine.Straight(
            ground,
            at,
            left * p.Left(p.UnitTangent(along)),
            PastMeshes * meshMm
        );
        (places, before) = across.Stepped(ground.Surface, meshMm);
        for (int i = 0; i < places.Length; i++)
        {
            if (i != before)
            {
                Put(net, new(0, i - before), ground, places[i], 0);
            }
        }

        ClothStop? stop = null;
        foreach (
            (Knot ahead, Knot behind) in new[]
            {
                (First, Second),
                (Second, Back),
                (Back, Down),
                (Down, First),
            }
        )
        {
            var march = new ClothMarch(ground, net, meshMm);
            march.Go(new(0, 0), 1, ahead, behind);
            stop ??= march.Stop;
        }

        return new(ground, weave, meshMm, net, stop);
    }

    private static void Put(ClothLattice net, Knot knot, ClothGround ground, Uv at, double turning)
    {
        SurfacePoint p = ground.Surface.At(at.U, at.V);
        net.Add(knot, new(at, p.P, p.GaussCurvature, turning, 0));
    }

    private static Vec3 Point(ClothGround ground, Uv at) => ground.Surface.At(at.U, at.V).P;

    /// <summary>By how much the line has turned to its left in the surface at each of its crossings, rad, by the angles between its chords.</summary>
    private static double[] Turned(ClothGround ground, Uv[] places)
    {
        SurfacePoint[] p = Array.ConvertAll(places, at => ground.Surface.At(at.U, at.V));
        double[] turned = new double[p.Length];
        double before = 0;
        for (int i = 1; i < p.Length; i++)
        {
            double here = 0;
            if (i + 1 < p.Length)
            {
                Vec3 came = p[i].UnitTangent(p[i].P - p[i - 1].P),
                    goes = p[i].UnitTangent(p[i + 1].P - p[i].P);
                here = Math.Atan2(p[i].Normal.Dot(came.Cross(goes)), came.Dot(goes));
            }

            // What is turned at a crossing belongs half to the chord before it and half to the one after.
            turned[i] = turned[i - 1] + ((before + here) / 2);
            before = here;
        }

        return turned;
    }
}
