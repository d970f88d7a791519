using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The corner between bottom and topside, in the plane square to the chine. With e along the bottom's face outboard, n its outward normal and m the topside's:
/// a face of the bottom at z along n meets the topside's face at s along m where (a e + z n) · m = s, so a = (s − z n·m)/(e·m).
/// </summary>
internal static class ChineCorner
{
    public static CornerRow? Of(
        Job job,
        HullSurface hull,
        SettingUpSpec spec,
        TopsideSpec topside,
        string station,
        double u
    )
    {
        LoftedSurface table = hull.Surface;
        SurfacePoint at = table.At(u, table.ChineV(u));
        Vec3 along = ChineRun(table, u);
        if (TopsideNormal(job, topside, at, along) is not { } m)
        {
            return null;
        }

        Vec3 n = at.Normal,
            e = along.Cross(n);
        e = e.Dot(at.Dv) > 0 ? e : -e;
        double nm = n.Dot(m),
            em = e.Dot(m);
        if (em < 0.05)
        {
            // The two faces run on in one another: there is no corner to trim to.
            return null;
        }

        double inside =
            job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? -job.Layers.Sum(l => l.ThicknessMm) : 0;
        double outside = inside + job.Layers.Sum(l => l.ThicknessMm);
        double outerS = job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? 0 : topside.ThicknessMm,
            innerS = outerS - topside.ThicknessMm;
        double Meet(double z, double s) => (s - (z * nm)) / em;
        double Trim(double z) =>
            topside.Lap switch
            {
                ChineLap.BottomLapsTopside => Meet(z, outerS),
                ChineLap.TopsideLapsBottom => Meet(z, innerS),
                _ => Meet(inside, innerS)
                    + (
                        (z - inside)
                        / (outside - inside)
                        * (Meet(outside, outerS) - Meet(inside, innerS))
                    ),
            };
        var trims = ImmutableArray.CreateBuilder<TrimRow>();
        double z = inside;
        foreach (LayerSpec layer in job.Layers)
        {
            double top = z + layer.ThicknessMm;
            if (layer is PlankLayerSpec)
            {
                double a = Trim(z),
                    b = Trim(top);
                trims.Add(
                    new(layer.Name, a, b, Math.Atan2(b - a, layer.ThicknessMm) * 180 / Math.PI)
                );
            }

            z = top;
        }

        // The faces turn by the angle between their normals; the corner inside is what is left of a half turn.
        double turn = Math.Acos(Math.Clamp(nm, -1, 1)),
            corner = Math.PI - turn;
        return new(
            station,
            at.P.X,
            corner * 180 / Math.PI,
            trims.ToImmutable(),
            spec.CornerRadiusMm * Math.Tan(turn / 2),
            spec.CornerRadiusMm * ((1 / Math.Cos(turn / 2)) - 1),
            spec.ChinePieceMm / (2 * Math.Sin(corner / 2))
        );
    }

    public static Vec3 ChineRun(LoftedSurface table, double u)
    {
        SurfacePoint at = table.At(u, table.ChineV(u));
        return (table.HasApex ? at.Du + at.Dv : at.Du).Unit();
    }

    /// <summary>The topside's outward normal, square to the chine: from a line of the offsets, or from its slope in the section.</summary>
    private static Vec3? TopsideNormal(Job job, TopsideSpec topside, SurfacePoint chine, Vec3 along)
    {
        Vec3? up = topside.SlopeDegrees is { } slope
            ? new Vec3(0, Math.Cos(slope * Math.PI / 180), Math.Sin(slope * Math.PI / 180))
            : Sheer(job, topside.Sheer!, chine.P);
        if (up is not { } u)
        {
            return null;
        }

        Vec3 normal = along.Cross(u).Unit();
        return normal.Y < 0 ? -normal : normal;
    }

    /// <summary>From the chine to the sheer in the section.</summary>
    private static Vec3? Sheer(Job job, string name, Vec3 chine)
    {
        OffsetLine line =
            job.Offsets.Find(name)
            ?? throw new JobFaultException(
                "[setting-up] topside",
                $"the table has no line '{name}'; there is {string.Join(", ", job.Offsets.Lines.Select(l => $"'{l.Name}'"))}"
            );
        var known = Enumerable
            .Range(0, job.Offsets.Stations.Length)
            .Where(i => line.HalfBreadthsMm[i] is not null && line.HeightsMm[i] is not null)
            .ToList();
        if (known.Count < 3)
        {
            throw new JobFaultException(
                "[setting-up] topside",
                $"the line '{name}' has {known.Count} stations with height and half-breadth; three at least are needed"
            );
        }

        double[] x = [.. known.Select(i => OffsetRow.PositionMm(job.Offsets, line, i))];
        if (chine.X < x[0] - 1 || chine.X > x[^1] + 1)
        {
            return null;
        }

        double y = CubicSpline
                .Through(x, [.. known.Select(i => line.HalfBreadthsMm[i]!.Value)])
                .At(chine.X),
            z = CubicSpline
                .Through(x, [.. known.Select(i => line.HeightsMm[i]!.Value)])
                .At(chine.X);
        var up = new Vec3(0, y - chine.Y, z - chine.Z);
        return up.Norm > 1 ? up.Unit() : null;
    }
}
