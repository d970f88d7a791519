using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>Lays a cloth on its face from the first line that is asked for, or from the best that is found.</summary>
internal static class ClothDraping
{
    /// <summary>A cloth sheared by less lies flat by itself, degrees. A proposal, no source.</summary>
    private const double FlatDegrees = Drape.FlatDegrees;

    /// <summary>How far the best line may be turned from that of mid-bottom, and by what steps, degrees. A proposal, no source.</summary>
    private const double MostTurned = 3,
        TurnedStep = 0.25;

    /// <summary>Other parts of the girth are tried where mid-bottom's cloth does not lie flat, or does not come to all edges; and where none of these does, keel and chine.</summary>
    private static readonly double[] OtherParts = [0.4, 0.6, 0.3, 0.7];

    /// <param name="reach">The flat places that the width of roll hangs on, of which the best line takes the least; none where the cloth does not come to all edges.</param>
    public static DrapedCloth Of(
        ClothFace face,
        SheathingSpec spec,
        ClothSpec cloth,
        Func<DrapedCloth, Vec2[]> reach
    ) =>
        spec.FirstAlong is FirstLine.Best
            ? Best(face, cloth, reach)
            : Along(face, cloth, spec.FirstAlong);

    private static DrapedCloth Best(
        ClothFace face,
        ClothSpec cloth,
        Func<DrapedCloth, Vec2[]> reach
    )
    {
        DrapedCloth middle = Along(face, cloth, new FirstLine.Straight(0.5, 0));
        Vec2[] places = reach(middle);
        if (middle.MostShear >= FlatDegrees || middle.Net.Stop is not null || places.Length == 0)
        {
            (DrapedCloth Cloth, bool Covers)[] Tried(params FirstLine[] lines) =>
                [
                    .. lines
                        .Select(l => Along(face, cloth, l))
                        .Select(d => (d, d.Net.Stop is null && reach(d).Length > 0)),
                ];
            (DrapedCloth Cloth, bool Covers)[] tried =
            [
                (middle, middle.Net.Stop is null && places.Length > 0),
                .. Tried([.. OtherParts.Select(p => new FirstLine.Straight(p, 0))]),
            ];
            if (!tried.Any(t => t.Covers))
            {
                tried = [.. tried, .. Tried(new FirstLine.AlongKeel(), new FirstLine.AlongChine())];
            }

            return tried
                .OrderByDescending(t => t.Covers)
                .ThenBy(t => t.Cloth.MostShear)
                .First()
                .Cloth;
        }

        int steps = (int)Math.Round(MostTurned / TurnedStep);
        // A turned line leaves a narrow end, and where it does so too soon no thread comes to the end's far corner: the next turn is taken that covers all.
        return Enumerable
                .Range(-steps, (2 * steps) + 1)
                .Select(i => i * TurnedStep)
                .OrderBy(t => Width(places, t))
                .ThenBy(Math.Abs)
                .TakeWhile(t => t != 0)
                .Select(t => Along(face, cloth, new FirstLine.Straight(0.5, t)))
                .FirstOrDefault(d =>
                    d.Net.Stop is null && d.MostShear < FlatDegrees && reach(d).Length > 0
                )
            ?? middle;
    }

    /// <summary>The width that places take across a roll whose length is turned by so much.</summary>
    private static double Width(Vec2[] places, double turnedDegrees)
    {
        double turned = turnedDegrees * Math.PI / 180;
        Vec2 across = new(-Math.Sin(turned), Math.Cos(turned));
        return places.Length == 0
            ? 0
            : places.Max(p => p.Dot(across)) - places.Min(p => p.Dot(across));
    }

    private static DrapedCloth Along(ClothFace face, ClothSpec cloth, FirstLine first)
    {
        double mesh = MeshMm(face),
            past = ClothLaying.PastMeshes * mesh * Math.Sqrt(2);
        ClothGround ground = face.Ground;
        Uv middle = face.AtPart(face.MiddleU, 0.5);
        SurfacePoint at = ground.Surface.At(middle.U, middle.V);
        // q grows outboard.
        int left = at.Left(at.UnitTangent(at.Du)).Dot(at.Dv) > 0 ? 1 : -1;
        bool square = cloth.Weave == Weave.Square;
        LaidLine line = first switch
        {
            FirstLine.AlongKeel => LaidLine.Along(
                ground,
                u => new(u, face.Region.LowerV(u)),
                face.Region.UFrom,
                face.Region.UTo,
                past
            ),
            FirstLine.AlongChine => LaidLine.Along(
                ground,
                u => new(u, face.Region.UpperV(u)),
                face.Region.UFrom,
                face.Region.UTo,
                past
            ),
            FirstLine.Point(var station, var part) => Straight(
                face,
                new(Station(face, station), part, square ? 0 : -45),
                left,
                past
            ),
            FirstLine.Straight(var part, var turned) => Straight(
                face,
                new(face.MiddleU, part, turned),
                left,
                past
            ),
            _ => throw new ArgumentException(
                "the best line is found by trying others",
                nameof(first)
            ),
        };
        line = square ? line.Halfway() : line;
        ClothNet net =
            square ? ClothLaying.FromThread(ground, ClothWeave.Square, line, left, mesh)
            : first is FirstLine.Point
                ? ClothLaying.FromThread(ground, ClothWeave.Diagonal, line, left, mesh)
            : ClothLaying.Along(ground, line, left, mesh);
        return new(net, first, line);
    }

    /// <summary>Meshes as close as four hundred to the length make them, within what is neither idle nor coarse.</summary>
    private static double MeshMm(ClothFace face) =>
        Math.Clamp((face.Region.UTo - face.Region.UFrom) / 400, 8, 60);

    private readonly record struct Course(double U, double Part, double TurnedDegrees);

    private static LaidLine Straight(ClothFace face, Course course, int left, double pastMm)
    {
        const double nearMm = 25;
        Uv through = face.AtPart(course.U, course.Part);
        SurfacePoint at = face.Region.Surface.At(through.U, through.V);
        Vec3 Point(double u) => face.Region.PointAt(face.AtPart(u, course.Part));
        Vec3 along = at.UnitTangent(Point(course.U + nearMm) - Point(course.U - nearMm)),
            outward = left * at.Left(along);
        double turned = course.TurnedDegrees * Math.PI / 180;
        return LaidLine.Straight(
            face.Ground,
            through,
            (Math.Cos(turned) * along) + (Math.Sin(turned) * outward),
            pastMm
        );
    }

    private static double Station(ClothFace face, string name)
    {
        StationOnHull station = face.Hull.Stations.First(s => s.Name == name);
        return Math.Clamp(station.U, face.Region.UFrom + 1, face.Region.UTo - 1);
    }
}
