using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Export.Solids;

/// <summary>From where a hull is looked at. Both angles nought: from abeam to starboard, forward to the right.</summary>
/// <param name="TurnDegrees">About the upright, towards forward.</param>
/// <param name="TiltDegrees">Up or, with a minus, down from level.</param>
/// <param name="UpsideDown">As it stands in the shop, keel up.</param>
public readonly record struct Sight(double TurnDegrees, double TiltDegrees, bool UpsideDown)
{
    /// <summary>Across the picture, up it, and towards who looks.</summary>
    internal (Vec3 Across, Vec3 Up, Vec3 Towards) Axes()
    {
        double turn = double.DegreesToRadians(TurnDegrees),
            tilt = double.DegreesToRadians(TiltDegrees),
            keelUp = UpsideDown ? -1 : 1;
        // x grows aft, y to starboard, z up.
        Vec3 towards =
                new(
                    -Math.Sin(turn) * Math.Cos(tilt),
                    Math.Cos(turn) * Math.Cos(tilt),
                    keelUp * Math.Sin(tilt)
                ),
            across = keelUp * new Vec3(-Math.Cos(turn), -Math.Sin(turn), 0);
        return (across, towards.Cross(across), towards);
    }
}

/// <summary>
/// Bodies of planks as they are seen from afar, in parallel lines, as a drawing: each plank is a layer of its own by its name, so that whoever shows it can colour it.
/// What is nearer is drawn over what is farther: side by side, skin by skin, plank by plank by their middles, which holds for the skins of a hull.
/// </summary>
public static class TurnedView
{
    private const double MarginMm = 4;

    /// <summary>Greys of a face, which light falls on from who looks.</summary>
    private const double Darkest = 0.45;
    private const double Lightest = 0.97;

    /// <param name="shown">Whether a plank is drawn at all.</param>
    public static Drawing Of(
        string title,
        ImmutableArray<PlankSolid> solids,
        Sight sight,
        (double WidthMm, double HeightMm) sheet,
        Func<PlankId, bool> shown
    )
    {
        (Vec3 across, Vec3 up, Vec3 towards) = sight.Axes();
        Vec2 Seen(Vec3 p) => new(p.Dot(across), p.Dot(up));
        // Placed by all of them, so that hiding a skin does not move the rest.
        Vec2[] all = [.. solids.SelectMany(s => s.Outer).Select(Seen)];
        if (all.Length == 0)
        {
            return new(title, sheet.WidthMm, sheet.HeightMm, []);
        }

        Vec2 least = new(all.Min(p => p.X), all.Min(p => p.Y)),
            most = new(all.Max(p => p.X), all.Max(p => p.Y)),
            middle = 0.5 * (least + most);
        double scale = Math.Min(
            (sheet.WidthMm - (2 * MarginMm)) / Math.Max(1, most.X - least.X),
            (sheet.HeightMm - (2 * MarginMm)) / Math.Max(1, most.Y - least.Y)
        );
        Vec2 centre = new(sheet.WidthMm / 2, sheet.HeightMm / 2);
        Vec2 Placed(Vec3 p) => centre + (scale * (Seen(p) - middle));
        return new(
            title,
            sheet.WidthMm,
            sheet.HeightMm,
            [
                .. FarFirst([.. solids.Where(s => shown(s.Id))], towards)
                    .SelectMany(s => Faces(s, towards, Placed)),
            ]
        );
    }

    private static IEnumerable<PlankSolid> FarFirst(
        ImmutableArray<PlankSolid> solids,
        Vec3 towards
    ) =>
        from s in solids
        let depth = Middle(s).Dot(towards)
        let outside = Facing(s, towards) > 0
        group (Solid: s, Depth: depth, Outside: outside) by (s.Id.Side, s.Id.Panel) into side
        orderby side.Average(o => o.Depth)
        from one in side.OrderBy(o => o.Outside)
            .ThenBy(o => o.Outside ? o.Solid.Id.Layer : -o.Solid.Id.Layer)
            .ThenBy(o => o.Depth)
        select one.Solid;

    /// <summary>The walls that are turned to who looks, then the face.</summary>
    private static IEnumerable<Shape> Faces(PlankSolid s, Vec3 towards, Func<Vec3, Vec2> placed)
    {
        string name = s.Id.ToString();
        int n = s.Outer.Length;
        var line = new Pen(0.08, 0.3);
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            Vec3 out_ = (s.Outer[j] - s.Outer[i]).Cross(s.Normals[i] + s.Normals[j]);
            if (out_.Dot(towards) > 0)
            {
                Vec3[] wall = [s.Outer[i], s.Outer[j], s.Inner[j], s.Inner[i]];
                yield return new Polyline(
                    name,
                    line,
                    [.. wall.Select(placed)],
                    Closed: true,
                    Darkest
                );
            }
        }

        double facing = Facing(s, towards);
        yield return new Polyline(
            name,
            line,
            [.. (facing > 0 ? s.Outer : s.Inner).Select(placed)],
            Closed: true,
            Darkest + ((Lightest - Darkest) * Math.Min(1, Math.Abs(facing)))
        );
    }

    /// <summary>How squarely the outer face is turned to who looks, from -1 to 1.</summary>
    private static double Facing(PlankSolid s, Vec3 towards) =>
        s.Normals.Average(n => n.Dot(towards));

    private static Vec3 Middle(PlankSolid s) =>
        s.Outer.Aggregate(Vec3.Zero, (sum, p) => sum + p) / s.Outer.Length;
}
