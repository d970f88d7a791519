using System.Globalization;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using Geo = NetTopologySuite.Geometries.Geometry;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>What every list of cuts must keep, by polygons of NetTopologySuite: the board is sawn up in the order told, and what is left over are the pieces.</summary>
internal static class BoardCutsLaws
{
    private static readonly GeometryFactory Nts = new();
    private static readonly SawTolerances Tolerances = SawTolerances.Usual;

    public static IEnumerable<string> Broken(NestSpec spec, BoardCutList list)
    {
        var shapes = list.Board.Pieces.ToDictionary(
            p => p.Piece.Id,
            p => BoardLaws.Shape(list.Frame.Of(p))
        );
        if (!list.Cuts.Select(c => c.Number).SequenceEqual(Enumerable.Range(1, list.Cuts.Length)))
        {
            yield return $"{list.Board.Id}: cuts are not numbered through";
        }

        foreach (SawCut cut in list.Cuts)
        {
            foreach (string fault in OfCut(cut, shapes, spec))
            {
                yield return $"{list.Board.Id}, cut {Text(cut)}: {fault}";
            }
        }

        foreach (string fault in Sawn(spec, list, shapes))
        {
            yield return $"{list.Board.Id}: {fault}";
        }

        foreach ((PieceId id, Polygon shape) in shapes)
        {
            if (Uncut(list, id, shape, spec.KerfMm) is { } point)
            {
                yield return $"{list.Board.Id}: no cut makes the outline of {id} at {point}";
            }
        }
    }

    private static string Text(SawCut cut) => $"{cut.Number} {cut.Kind} {cut.EndOf}|{cut.BeginOf}";

    /// <summary>The line touches the end that it makes and enters no piece.</summary>
    private static IEnumerable<string> OfCut(
        SawCut cut,
        Dictionary<PieceId, Polygon> shapes,
        NestSpec spec
    )
    {
        LineString line = Line(cut.Line);
        foreach (
            (PieceId id, double away) in new[]
            {
                (cut.EndOf, 0),
                (cut.BeginOf, cut.EndOf is null ? 0 : spec.KerfMm),
            }
                .Where(e => e.Item1 is not null)
                .Select(e => (e.Item1!.Value, (double)e.Item2))
        )
        {
            double near = DistanceOp.Distance(line, shapes[id]);
            double wrong = Math.Abs(near - away);
            if (cut.Kind != CutKind.Parting && wrong > Tolerances.SharedMm + 0.05)
            {
                yield return $"is {near:0.000} mm from {id}, and not {away}";
            }
        }

        foreach ((PieceId id, Polygon shape) in shapes)
        {
            // A rip runs along planks that may stand proud of it by what the job allows.
            double deep = cut.Kind == CutKind.Rip ? spec.ProudMm + 0.05 : 0.06;
            if (line.Intersects(shape.Buffer(-deep)))
            {
                yield return $"enters {id}";
            }
        }
    }

    /// <summary>Lane by lane, each cut takes its kerf out of the part that it is carried across; no piece of that part loses more than a corner's hair by it.</summary>
    private static IEnumerable<string> Sawn(
        NestSpec spec,
        BoardCutList list,
        Dictionary<PieceId, Polygon> shapes
    )
    {
        for (int l = 0; l < list.Lanes.Length; l++)
        {
            SawnLane lane = list.Lanes[l];
            List<Geo> parts =
            [
                Nts.ToGeometry(new Envelope(-1, list.Frame.LengthMm + 1, lane.LowMm, lane.HighMm)),
            ];
            foreach (
                SawCut cut in list.Cuts.Where(c =>
                    c.Lane == l && c.Kind is CutKind.Crosscut or CutKind.Parting && c.Lane == l
                )
            )
            {
                PieceId owner = (cut.EndOf ?? cut.BeginOf)!.Value;
                Geo part = parts.MaxBy(p => p.Common(shapes[owner]).Area)!;
                Polygon band = Band(cut, lane);
                foreach (PieceId id in lane.PieceIds.Where(i => part.Contains(shapes[i].Centroid)))
                {
                    double may = Tolerances.StraightMm + 0.06 + (cut.ToTheLine ? 2 * cut.OffMm : 0);
                    if (Entered(band, shapes[id]) > may)
                    {
                        yield return $"the kerf of cut {Text(cut)} enters {id}";
                    }
                }

                parts.Remove(part);
                Geo left = part.Without(band);
                parts.AddRange(Enumerable.Range(0, left.NumGeometries).Select(left.GetGeometryN));
            }

            bool waits = list.Cuts.Any(c => c.Lane == l && c.Kind == CutKind.Stopped);
            foreach (Geo part in parts)
            {
                int held = lane.PieceIds.Count(i => part.Contains(shapes[i].Centroid));
                if (held > 1 && !waits)
                {
                    yield return $"{held} pieces of lane {l + 1} are not parted, and nothing says so";
                }
            }
        }
    }

    /// <summary>The kerf of a cut across a lane, carried on a little beyond its edges.</summary>
    private static Polygon Band(SawCut cut, SawnLane lane)
    {
        double over = Math.Abs(cut.KerfMm) + 1;
        Vec2 slope = (cut.To - cut.From) / (cut.To.Y - cut.From.Y),
            a = cut.From + ((lane.LowMm - over - cut.From.Y) * slope),
            b = cut.From + ((lane.HighMm + over - cut.From.Y) * slope),
            kerf = -cut.KerfMm * (b - a).Unit().Left();
        return Nts.CreatePolygon([
            .. new[] { a, b, b + kerf, a + kerf, a }.Select(p => new Coordinate(p.X, p.Y)),
        ]);
    }

    /// <summary>How deep a shape reaches into a kerf, from the side from which it reaches less deep.</summary>
    private static double Entered(Polygon band, Polygon shape)
    {
        Coordinate[] b = band.ExteriorRing.Coordinates,
            inside = band.Common(shape).Coordinates;
        return new[] { (b[0], b[1]), (b[3], b[2]) }.Min(side =>
            inside
                .Select(c =>
                    NetTopologySuite.Algorithm.DistanceComputer.PointToLinePerpendicular(
                        c,
                        side.Item1,
                        side.Item2
                    )
                )
                .DefaultIfEmpty(0)
                .Max()
        );
    }

    /// <summary>A point of an outline that no cut, rip or edge of the board lies at; null where all of it is made.</summary>
    private static string? Uncut(BoardCutList list, PieceId id, Polygon shape, double kerf)
    {
        BoardFrame frame = list.Frame;
        List<Geo> lines =
        [
            Nts.ToGeometry(new Envelope(0, frame.LengthMm, 0, frame.WidthMm)).Boundary,
        ];
        foreach (SawCut cut in list.Cuts)
        {
            lines.Add(Line(cut.Line));
            Vec2 along = cut.To - cut.From;
            // The other side of the kerf, where it makes an edge or an end too.
            Vec2 far =
                (cut.Kind is CutKind.Rip or CutKind.Edge ? 1 : -1)
                * cut.KerfMm
                * along.Unit().Left();
            if (cut.Kind == CutKind.Rip || cut.IsShared)
            {
                // The saw runs out over both edges: the far side of a leaning kerf comes to an edge later than the near one.
                double lean = cut.Kind == CutKind.Rip ? 0 : Math.Abs(along.X / along.Y);
                Vec2 over = Math.Abs(cut.KerfMm) * (1 + lean) * along.Unit();
                lines.Add(Line([cut.From + far - over, cut.To + far + over]));
            }
        }

        Geo made = Nts.BuildGeometry(lines);
        // Nicks at corners are left: they are shorter than this.
        double nick = Tolerances.LeastMm + 0.1,
            edge = Tolerances.EdgeMm + Tolerances.StraightMm + 0.1;
        Coordinate[] ring = shape.ExteriorRing.Coordinates;
        for (int i = 0; i + 1 < ring.Length; i++)
        {
            if (ring[i].Distance(ring[i + 1]) < nick)
            {
                continue;
            }

            for (double t = 0.1; t < 1; t += 0.2)
            {
                Point p = Nts.CreatePoint(
                    new Coordinate(
                        ring[i].X + (t * (ring[i + 1].X - ring[i].X)),
                        ring[i].Y + (t * (ring[i + 1].Y - ring[i].Y))
                    )
                );
                if (made.Distance(p) > edge)
                {
                    return string.Create(
                        CultureInfo.InvariantCulture,
                        $"({p.X:0.0}, {p.Y:0.0}), {made.Distance(p):0.00} mm off"
                    );
                }
            }
        }

        return null;
    }

    private static LineString Line(IEnumerable<Vec2> points) =>
        Nts.CreateLineString([.. points.Select(p => new Coordinate(p.X, p.Y))]);
}
