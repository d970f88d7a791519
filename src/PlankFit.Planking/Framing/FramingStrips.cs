using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Framing;

/// <summary>From what the job says of a thing behind to the strips of the inner face that it covers.</summary>
internal static class FramingStrips
{
    /// <summary>Spacing of the places at which a centre line is found exactly, mm.</summary>
    private const double EveryMm = 40;

    /// <summary>A line is followed so far past the edge of the bottom, besides its own width, mm.</summary>
    private const double PastMm = 40;

    /// <summary>What <see cref="FramingChecks"/> has let pass.</summary>
    public static IReadOnlyList<FramingStrip> Of(
        FramingSpec spec,
        OffsetTable table,
        HullSurface hull,
        SectionFace face
    ) =>
        spec.Line switch
        {
            FramingLine.AtPosition(var x) => Across(spec, face, x),
            FramingLine.AtStation(var name) => Across(spec, face, StationX(spec, table, name)),
            FramingLine.Spot spot => Spot(spec, spot, table, hull, face),
            _ => Along(spec, Line(spec, spec.Line, table, hull, face), face),
        };

    /// <summary>A line along the hull: its place on the face at x, where it has one.</summary>
    private sealed record LineAlong(double FromX, double ToX, Func<double, Uv> At);

    private static LineAlong Line(
        FramingSpec spec,
        FramingLine line,
        OffsetTable table,
        HullSurface hull,
        SectionFace face
    )
    {
        double beyond = spec.WidthMm + PastMm,
            // Where keel and chine meet in a point there is nothing ahead of it.
            from = face.FromX + (hull.Surface.HasApex ? 1 : -beyond);
        switch (line)
        {
            case FramingLine.FromKeel(var mm):
                return new(from, face.ToX + beyond, x => face.Out(x, face.KeelAt(x), mm));
            case FramingLine.FromChine(var mm):
                return new(from, face.ToX + beyond, x => face.Out(x, face.ChineAt(x), -mm));
            default:
                string name = ((FramingLine.Offsets)line).Name;
                var drawn = LineOnFace.Of(spec, name, table, hull);
                return new(drawn.FromX, drawn.ToX, drawn.At);
        }
    }

    private static IReadOnlyList<FramingStrip> Along(
        FramingSpec spec,
        LineAlong line,
        SectionFace face
    )
    {
        double from = Math.Max(line.FromX, spec.FromMm ?? double.NegativeInfinity),
            to = Math.Min(line.ToX, spec.ToMm ?? double.PositiveInfinity);
        if (!(to - from > 1))
        {
            return [];
        }

        int n = Math.Max(6, (int)Math.Ceiling((to - from) / EveryMm));
        var places = new Uv?[n + 1];
        for (int i = 0; i <= n; i++)
        {
            Uv at = line.At(from + ((to - from) * i / n));
            places[i] = IsNear(face, at, spec.WidthMm) ? at : null;
        }

        bool isTable = spec.Line is FramingLine.Offsets;
        return
        [
            .. Runs(places)
                .Select(r =>
                    FramingStrip.About(
                        spec,
                        face.Surface,
                        [
                            .. Enumerable
                                .Range(r.First, r.Last - r.First + 1)
                                .Select(i => places[i]!.Value),
                        ],
                        r.First == 0 && (isTable || spec.FromMm > line.FromX),
                        r.Last == n && (isTable || spec.ToMm < line.ToX)
                    )
                ),
        ];
    }

    private static IReadOnlyList<FramingStrip> Across(FramingSpec spec, SectionFace face, double x)
    {
        if (x < face.FromX - spec.WidthMm || x > face.ToX + spec.WidthMm)
        {
            return [];
        }

        Uv keel = face.KeelAt(x);
        double girth = face.GirthMm(x),
            beyond = spec.WidthMm + PastMm,
            from = spec.OutFromMm ?? -beyond,
            to = Math.Min(spec.OutToMm ?? double.PositiveInfinity, girth + beyond);
        if (!(to - from > 1))
        {
            return [];
        }

        int n = Math.Max(8, (int)Math.Ceiling((to - from) / EveryMm));
        Uv[] places =
        [
            .. Enumerable
                .Range(0, n + 1)
                .Select(i => face.Out(x, keel, from + ((to - from) * i / n))),
        ];
        return
        [
            FramingStrip.About(
                spec,
                face.Surface,
                places,
                spec.OutFromMm is not null,
                spec.OutToMm < girth + beyond
            ),
        ];
    }

    /// <summary>Half its length ahead of its middle and half abaft, measured along its own line.</summary>
    private static IReadOnlyList<FramingStrip> Spot(
        FramingSpec spec,
        FramingLine.Spot spot,
        OffsetTable table,
        HullSurface hull,
        SectionFace face
    )
    {
        double x = spot.Across switch
        {
            FramingLine.AtStation(var name) => StationX(spec, table, name),
            _ => ((FramingLine.AtPosition)spot.Across).XMm,
        };
        double half = spec.LengthMm!.Value / 2;
        LineAlong line = Line(spec, spot.Along, table, hull, face);
        if (x - half < line.FromX || x + half > line.ToX)
        {
            return [];
        }

        // A little more than the length, so that the ends can be found on it.
        const int n = 12;
        double reach = half + 1;
        Uv[] wide =
        [
            .. Enumerable.Range(0, n + 1).Select(i => line.At(x + (reach * ((2.0 * i / n) - 1)))),
        ];
        if (!wide.All(w => IsNear(face, w, spec.WidthMm)))
        {
            return [];
        }

        var whole = FramingStrip.About(spec, face.Surface, wide, true, true);
        double middle = whole.Nodes[n / 2];
        Uv[] places =
        [
            .. Enumerable
                .Range(0, n + 1)
                .Select(i => whole.Centre.At(middle + (half * ((2.0 * i / n) - 1)))),
        ];
        return [FramingStrip.About(spec, face.Surface, places, true, true)];
    }

    private static double StationX(FramingSpec spec, OffsetTable table, string name) =>
        table.Stations.Single(s => s.Name == name).PositionMm;

    /// <summary>So far off the bottom that none of its width can touch it, the surface carried on is no guide.</summary>
    private static bool IsNear(SectionFace face, Uv at, double widthMm)
    {
        if (!double.IsFinite(at.U) || !double.IsFinite(at.V))
        {
            return false;
        }

        double scale = face.Surface.At(at.U, at.V).Dv.Norm,
            room = Math.Min(at.V - face.Keel(at.U).V, face.Chine(at.U).V - at.V) * scale;
        return room > -(widthMm + (2 * PastMm));
    }

    private static IEnumerable<(int First, int Last)> Runs(Uv?[] places)
    {
        int? first = null;
        for (int i = 0; i <= places.Length; i++)
        {
            if (i < places.Length && places[i] is not null)
            {
                first ??= i;
            }
            else if (first is { } from)
            {
                if (i - from >= 4)
                {
                    yield return (from, i - 1);
                }

                first = null;
            }
        }
    }
}
