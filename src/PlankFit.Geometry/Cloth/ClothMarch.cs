using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>
/// Lays crossing after crossing from a row of them: each new one lies a mesh from two neighbours of the row before. A row loses one by that; where an end of it
/// still lies on the ground the thread that ends there runs straight on, which is our own rule for a free edge, no source.
/// </summary>
/// <param name="meshMm">Between crossings along a thread, as a chord: second order in it.</param>
internal sealed class ClothMarch(ClothGround ground, ClothLattice net, double meshMm)
{
    /// <summary>Beyond this shear no cloth follows, and the step itself becomes unsure: threads nearly side by side no longer fix where they cross.</summary>
    private const double MostRad = Math.PI / 3;

    /// <summary>Crossings are kept so many meshes past the ground's edges, and an end nearer than the lesser is carried on.</summary>
    private const double KeptMeshes = 1.6,
        OnMeshes = 0.25;

    private const int MostSteps = 12;

    /// <summary>Where the first crossing was that could not be laid; null where all could.</summary>
    public ClothStop? Stop { get; private set; }

    /// <param name="start">The first of the row, which is there with all others.</param>
    /// <param name="count">How many there are, each a step of <paramref name="ahead"/> less one of <paramref name="behind"/> from the one before.</param>
    /// <param name="ahead">The step that leads from a crossing of the row to one of the next.</param>
    /// <param name="behind">The other such step, from the crossing after it in the row.</param>
    /// <param name="first">Of the first row, where nothing lies behind it; null where something does.</param>
    public void Go(Knot start, int count, Knot ahead, Knot behind, FirstRow? first = null)
    {
        Knot along = ahead - behind;
        while (count > 0)
        {
            Knot next = start + ahead;
            for (int i = 0; i + 1 < count; i++)
            {
                Knot a = Times(start, along, i);
                if (!net.Has(a + ahead) && !Lay(a, a + along, ahead, behind, first))
                {
                    return;
                }
            }

            int laid = count - 1;
            if (net.Has(start + behind) || Straight(start, behind, laid > 0 ? next : start))
            {
                next = start + behind;
                laid++;
            }

            Knot last = Times(start, along, count - 1);
            Knot end = last + ahead;
            if (net.Has(end) || Straight(last, ahead, laid > 0 ? end - along : last))
            {
                laid++;
            }

            (start, count) = Trimmed(next, laid, along);
            first = null;
        }
    }

    private static Knot Times(Knot start, Knot along, int i) =>
        new(start.First + (i * along.First), start.Second + (i * along.Second));

    private double Out(Knot at) => ground.OutMm(net[at].At);

    /// <summary>The row without what lies far outside at its ends; none where all of it does.</summary>
    private (Knot Start, int Count) Trimmed(Knot start, int count, Knot along)
    {
        double kept = KeptMeshes * meshMm;
        while (count > 0 && Out(start) > kept && (count == 1 || Out(start + along) > kept))
        {
            start += along;
            count--;
        }

        while (
            count > 1
            && Out(Times(start, along, count - 1)) > kept
            && Out(Times(start, along, count - 2)) > kept
        )
        {
            count--;
        }

        return (start, count);
    }

    /// <summary>The crossing a mesh from two neighbours, by Newton's method on the squares of both distances.</summary>
    private bool Lay(Knot a, Knot b, Knot ahead, Knot behind, FirstRow? first)
    {
        ClothNode from = net[a],
            to = net[b];
        ClothNode? opposite = net.Find(a - behind);
        Uv at = opposite is { } o ? from.At + to.At - o.At : Beside(from, to, first!.Left);
        SurfacePoint p = ground.Surface.At(at.U, at.V);
        double square = meshMm * meshMm;
        for (int i = 0; ; i++)
        {
            Vec3 fromA = p.P - from.P,
                fromB = p.P - to.P;
            double missA = (fromA.NormSquared - square) / 2,
                missB = (fromB.NormSquared - square) / 2;
            if (Math.Abs(missA) + Math.Abs(missB) < 1e-12 * square)
            {
                break;
            }

            double au = fromA.Dot(p.Du),
                av = fromA.Dot(p.Dv),
                bu = fromB.Dot(p.Du),
                bv = fromB.Dot(p.Dv),
                det = (au * bv) - (av * bu);
            at -= new Uv(((missA * bv) - (missB * av)) / det, ((missB * au) - (missA * bu)) / det);
            p = ground.Surface.At(at.U, at.V);
            if (i == MostSteps || !p.P.IsFinite)
            {
                return Stopped(from, null);
            }
        }

        double gauss = p.GaussCurvature,
            turning,
            bulge;
        if (opposite is { } corner)
        {
            double shear = Shear(corner.P, from.P, to.P, p.P, ahead, behind);
            if (!(Math.Abs(shear) <= MostRad))
            {
                return Stopped(from, shear * 180 / Math.PI);
            }

            turning = from.Turning + to.Turning - corner.Turning;
            bulge =
                from.Bulge
                + to.Bulge
                - corner.Bulge
                + (
                    (gauss + from.Gauss + to.Gauss + corner.Gauss)
                    / 4
                    * square
                    * Math.Cos(shear)
                    * Sense(ahead, behind)
                );
        }
        else
        {
            // The first row: of the stretch between the two what the first line turns in it, and half a mesh of ground.
            turning = first!.Turned(a, b);
            bulge = (gauss + from.Gauss + to.Gauss) / 3 * square / 2;
        }

        net.Add(a + ahead, new(at, p.P, gauss, turning, bulge));
        return true;
    }

    /// <summary>Whether a mesh laid so adds its curvature to the shear or takes it off: the two pairs of corners of a mesh count against each other.</summary>
    private static int Sense(Knot ahead, Knot behind) =>
        -Math.Sign((ahead.First + behind.First) * (ahead.Second + behind.Second));

    /// <summary>The shear of a mesh: positive where its diagonal along the steps of both sets is the shorter.</summary>
    private static double Shear(Vec3 corner, Vec3 a, Vec3 b, Vec3 laid, Knot ahead, Knot behind)
    {
        double far = corner.ChordTo(laid),
            across = a.ChordTo(b);
        bool farIsAlong = ahead.First + behind.First == ahead.Second + behind.Second;
        return (2 * (farIsAlong ? Math.Atan2(across, far) : Math.Atan2(far, across)))
            - (Math.PI / 2);
    }

    private Uv Beside(ClothNode from, ClothNode to, int left)
    {
        Uv middle = 0.5 * (from.At + to.At);
        SurfacePoint p = ground.Surface.At(middle.U, middle.V);
        return middle
            + p.Rates(left * meshMm * Math.Sqrt(0.5) * p.Left(p.UnitTangent(to.P - from.P)));
    }

    /// <summary>One crossing more along the thread that ends at an end of the row, where the new row's end still lies on the ground.</summary>
    private bool Straight(Knot end, Knot step, Knot newEnd)
    {
        if (!(Out(newEnd) < OnMeshes * meshMm) || net.Find(end - step) is not { } before)
        {
            return false;
        }

        ClothNode from = net[end];
        SurfacePoint p = ground.Surface.At(from.At.U, from.At.V);
        if (On(p, from.At, p.UnitTangent(from.P - before.P)) is not var (at, laid))
        {
            return false;
        }

        net.Add(end + step, new(at, laid.P, laid.GaussCurvature, from.Turning, from.Bulge));
        return true;
    }

    /// <summary>
    /// A mesh on from a place, as a chord whose tangential part there has the direction that the chord before it had: those of a straight thread agree to the
    /// fourth order, while its tangent differs from both by what the ground twists.
    /// </summary>
    private (Uv At, SurfacePoint Point)? On(SurfacePoint from, Uv start, Vec3 direction)
    {
        Vec3 across = from.Left(direction);
        double square = meshMm * meshMm;
        Uv at = start + from.Rates(meshMm * direction);
        for (int i = 0; i < MostSteps; i++)
        {
            SurfacePoint p = ground.Surface.At(at.U, at.V);
            Vec3 chord = p.P - from.P;
            double miss = (chord.NormSquared - square) / 2,
                aside = chord.Dot(across);
            if (Math.Abs(miss) < 1e-12 * square && Math.Abs(aside) < 1e-12 * meshMm)
            {
                return (at, p);
            }

            double au = chord.Dot(p.Du),
                av = chord.Dot(p.Dv),
                bu = across.Dot(p.Du),
                bv = across.Dot(p.Dv),
                det = (au * bv) - (av * bu);
            at -= new Uv(((miss * bv) - (aside * av)) / det, ((aside * au) - (miss * bu)) / det);
        }

        return null;
    }

    private bool Stopped(ClothNode at, double? shear)
    {
        // Beyond the ground's edges nothing is asked.
        if (ground.OutMm(at.At) < meshMm)
        {
            Stop = new(at.At, at.P, shear);
        }

        return false;
    }
}

/// <summary>What the first row needs that has only a line behind it.</summary>
/// <param name="Left">1 where the rows go to the left of the line as the row runs, seen from the side of the ground's normal; -1 where they go to the right.</param>
/// <param name="Turned">The angle by which the line bends towards the rows between two of its crossings, rad.</param>
internal sealed record FirstRow(int Left, Func<Knot, Knot, double> Turned);
