using System.Collections.Immutable;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.SettingUp;

/// <summary>
/// A parallel surface of the bottom cut by a frame's plane: the true trace, not the section moved in by the thickness. Its parameter is the part of the way
/// from the table's keel line (0) to its chine (1), both carried square to the surface; it goes on past both.
/// </summary>
internal sealed class SectionCut
{
    private const double InPlaneMm = 1e-10;

    private readonly LoftedSurface hull;
    private readonly ISurface surface;
    private readonly SectionPlane plane;
    private readonly double uGuess;

    public SectionCut(LoftedSurface hull, double offsetMm, SectionPlane plane, double uGuess)
    {
        (this.hull, this.plane, this.uGuess) = (hull, plane, uGuess);
        surface = offsetMm == 0 ? hull : new ParallelSurface(hull, offsetMm);
    }

    /// <summary>The place at a part of the way, by Newton in u; within 1e-10 mm of the plane.</summary>
    public SectionSpot At(double part)
    {
        double u = uGuess;
        for (int i = 0; ; i++)
        {
            double whole = hull.UpperV(u);
            SurfacePoint p = surface.At(u, part * whole);
            Vec3 along = hull.HasApex ? p.Du + (part * p.Dv) : p.Du;
            double off = plane.OffMm(p.P),
                rate = along.Dot(plane.Aft);
            if (Math.Abs(off) < InPlaneMm || i == 30)
            {
                Vec3 across = whole * p.Dv;
                return new(
                    u,
                    p,
                    plane.Flat(p.P),
                    plane.FlatDirection(across - (across.Dot(plane.Aft) / rate * along)),
                    plane.FlatDirection(p.Normal).Unit()
                );
            }

            u -= off / rate;
        }
    }

    /// <summary>The part at which the trace meets a side of the keel; null where it does so nowhere near the bottom.</summary>
    public double? MeetsKeel(KeelSideFace side)
    {
        SectionSpot at = At(0);
        double v = 0;
        for (int i = 0; i < 50; i++)
        {
            v = side.Meet(surface, at.U, v);
            double part = v / hull.UpperV(at.U);
            if (!(Math.Abs(part) < 1.5))
            {
                return null;
            }

            SectionSpot next = At(part);
            if (Math.Abs(next.U - at.U) < 1e-10)
            {
                return part;
            }

            at = next;
        }

        return null;
    }

    /// <summary>The part at which the trace meets a plane through a place, by Newton.</summary>
    public double? MeetsPlane(Vec3 through, Vec3 normal, double guess)
    {
        double part = guess;
        for (int i = 0; i < 30; i++)
        {
            SectionSpot at = At(part);
            double off = (plane.Point(at.Flat) - through).Dot(normal);
            if (Math.Abs(off) < 1e-9)
            {
                return part;
            }

            part -= off / plane.Direction(at.Run).Dot(normal);
            if (!(Math.Abs(part) < 2))
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>How far in from a place, against a direction, the trace lies; and the part at which it does.</summary>
    public (double Mm, double Part) InFrom(Vec2 place, Vec2 outward, double guess)
    {
        double part = guess,
            mm = 0;
        for (int i = 0; i < 30; i++)
        {
            SectionSpot at = At(part);
            Vec2 miss = at.Flat + (mm * outward) - place;
            if (miss.Norm < 1e-9)
            {
                break;
            }

            double det = at.Run.Cross(outward);
            part -= miss.Cross(outward) / det;
            mm -= at.Run.Cross(miss) / det;
        }

        return (mm, part);
    }

    /// <summary>The trace between two parts as a chain of chords, each within 0.002 mm of it.</summary>
    public ImmutableArray<Vec2> Line(double from, double to) =>
        FlatLines.Polyline(part => At(part).Flat, from, to, 0.002);
}

/// <summary>A place of a trace.</summary>
/// <param name="Flat">In the plane.</param>
/// <param name="Run">How it moves with the part, in the plane; outboard.</param>
/// <param name="Outward">The unit normal of the trace in the plane, out of the hull.</param>
internal readonly record struct SectionSpot(
    double U,
    SurfacePoint Surface,
    Vec2 Flat,
    Vec2 Run,
    Vec2 Outward
);
