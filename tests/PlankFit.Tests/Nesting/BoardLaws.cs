using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>What lies in a board, piece by piece and pair by pair, as polygons of NetTopologySuite.</summary>
internal static class BoardLaws
{
    /// <summary>So much nearer than a kerf, or over an edge, is told as nothing, mm: outlines are thinned within this when they are laid.</summary>
    public const double NearMm = 0.02;

    /// <summary>A shape moved as a whole keeps its lengths, but for what doubles lose, mm.</summary>
    private const double RigidMm = 1e-6;

    private const double MostTiltDegrees = 5;

    private static readonly GeometryFactory Nts = new();

    public static IEnumerable<string> Broken(NestSpec spec, SawnBoard board)
    {
        foreach (LaidPiece lost in board.Pieces.Where(p => p.Outline.Any(v => !v.IsFinite)))
        {
            yield return $"{board.Id}, {lost.Piece.Id}: lies nowhere";
            yield break;
        }

        Polygon[] shapes = [.. board.Pieces.Select(p => Shape(p.Outline))];
        for (int i = 0; i < shapes.Length; i++)
        {
            LaidPiece laid = board.Pieces[i];
            string who = $"{board.Id}, {laid.Piece.Id}";
            foreach (
                string fault in Pose(board, laid)
                    .Concat(Room(spec, board.Stock, shapes[i]))
                    .Concat(Faults(board.Stock, shapes[i]))
            )
            {
                yield return $"{who}: {fault}";
            }

            for (int j = 0; j < i; j++)
            {
                if (shapes[i].Distance(shapes[j]) is var apart && apart < spec.KerfMm - NearMm)
                {
                    yield return $"{who} is {apart:0.000} mm from {board.Pieces[j].Piece.Id}, and the kerf is {spec.KerfMm}";
                }

                if (shapes[i].Common(shapes[j]).Area > NearMm * shapes[i].Length)
                {
                    yield return $"{who} overlaps {board.Pieces[j].Piece.Id}";
                }
            }
        }
    }

    /// <summary>The same shape, of the same hand unless it lies face down, along the grain, turned only where it may be.</summary>
    private static IEnumerable<string> Pose(SawnBoard board, LaidPiece laid)
    {
        SawPiece piece = laid.Piece;
        Vec2[] own = [.. laid.Sawn ?? piece.Outline],
            lies = [.. laid.Outline];
        if (laid.FaceDown)
        {
            if (!piece.MayTurnFace)
            {
                yield return "lies face down, which is forbidden";
            }

            // Seen from its inner face: the mirror image, and round the other way.
            own = [.. own.Select(p => new Vec2(p.X, -p.Y)).Reverse()];
        }

        if (laid.Turned && !piece.MayTurnEnd)
        {
            yield return "is turned end for end, which is forbidden";
        }

        int a = 0,
            b = 0;
        for (int i = 0; i < own.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (own[i].ChordTo(own[j]) > own[a].ChordTo(own[b]))
                {
                    (a, b) = (i, j);
                }
            }
        }

        // Moved as a whole by the turn of its longest chord; every vertex must follow.
        double turn = Angle(lies[b] - lies[a]) - Angle(own[b] - own[a]);
        (double sin, double cos) = Math.SinCos(turn);
        double worst = own.Select(
                (p, i) =>
                {
                    Vec2 d = p - own[a];
                    return lies[i]
                        .ChordTo(
                            lies[a] + new Vec2((d.X * cos) - (d.Y * sin), (d.X * sin) + (d.Y * cos))
                        );
                }
            )
            .Max();
        if (
            worst > RigidMm
            || Math.Abs(Shape(laid.Outline).Area - Shape(laid.Sawn ?? piece.Outline).Area)
                > RigidMm * 1e4
        )
        {
            yield return $"is not the shape that was asked for, by {worst} mm";
        }

        foreach (string fault in Longer(laid))
        {
            yield return fault;
        }

        double grain = board.Stock.GrainAcross ? -90 : 0,
            off = Math.IEEERemainder((turn * 180 / Math.PI) - grain - (laid.Turned ? 180 : 0), 360);
        if (Math.Abs(off) > MostTiltDegrees)
        {
            yield return $"lies {off:0.0} degrees from the grain";
        }
    }

    /// <summary>What is sawn longer than asked holds what was asked, and is longer at ends that are left long and nowhere else, by what is said of them.</summary>
    private static IEnumerable<string> Longer(LaidPiece laid)
    {
        if (laid.Sawn is not { } sawn)
        {
            yield break;
        }

        Polygon asked = Shape(laid.Piece.Outline),
            longer = Shape(sawn);
        // Of an end left long by more than must stand there, no more than that is asked.
        NetTopologySuite.Geometries.Geometry must = laid
            .Piece.LongEnds.Where(e => e.LeastMm < e.ByMm)
            .Aggregate<LongEnd, NetTopologySuite.Geometries.Geometry>(
                asked,
                (left, e) => left.Without(Beyond(e))
            );
        if (must.Without(longer.Buffer(RigidMm)).Area > 0)
        {
            yield return "is sawn short of what was asked for";
        }

        double least = laid.Long.Min(l => l.LeastMm),
            most = laid.Long.Max(l => l.MostMm);
        foreach (Coordinate c in longer.Without(asked.Buffer(RigidMm)).Coordinates)
        {
            var at = new Vec2(c.X, c.Y);
            double beyond = laid
                .Piece.LongEnds.Select(e =>
                {
                    // From the net end's chord, and from whatever of it stands furthest out.
                    Vec2 chord = e.Net[^1] - e.Net[0],
                        outward = e.Outward;
                    if (Math.Abs(chord.Unit().Dot(outward)) > 1e-9)
                    {
                        return double.NegativeInfinity;
                    }

                    double off =
                        (at - e.Net[0]).Dot(outward) - e.Net.Max(n => (n - e.Net[0]).Dot(outward));
                    return off >= e.LeastMm - 1e-3 ? off : double.NegativeInfinity;
                })
                .DefaultIfEmpty(double.NegativeInfinity)
                .Max();
            if (!(beyond >= 0) || beyond > most + 1e-3)
            {
                yield return $"is sawn longer by {beyond:0.00} mm where no end is left long, or by more than the {least:0.0} to {most:0.0} told";
            }
        }
    }

    /// <summary>All that lies further beyond a net end than must stand there.</summary>
    private static Polygon Beyond(LongEnd end)
    {
        const double FarMm = 1e5;
        Vec2 along = FarMm * new Vec2(-end.Outward.Y, end.Outward.X),
            foot =
                (end.LeastMm + end.Net.Max(n => n.X * end.Outward.X + n.Y * end.Outward.Y))
                * end.Outward;
        return Shape([
            foot - along,
            foot - along + (FarMm * end.Outward),
            foot + along + (FarMm * end.Outward),
            foot + along,
        ]);
    }

    /// <summary>Within what the board's row and the job leave of it; across the grain proud of it by what is allowed.</summary>
    private static IEnumerable<string> Room(NestSpec spec, StockBoard stock, Polygon shape)
    {
        Envelope e = shape.EnvelopeInternal;
        double alongX = Over(
                e.MinX,
                e.MaxX,
                stock.MarkedEndMm + spec.EndMm,
                stock.LengthMm - stock.OtherEndMm - spec.EndMm
            ),
            alongY = Over(e.MinY, e.MaxY, spec.EdgeMm, stock.WidthMm - spec.EdgeMm),
            length = stock.GrainAcross ? alongY : alongX,
            width = stock.GrainAcross ? alongX : alongY;
        if (length > NearMm)
        {
            yield return $"reaches {length:0.000} mm beyond the board's usable length";
        }

        if (width > spec.ProudMm + NearMm)
        {
            yield return $"reaches {width:0.000} mm beyond the board's usable width";
        }
    }

    private static double Over(double least, double most, double from, double to) =>
        Math.Max(0, from - least) + Math.Max(0, most - to);

    private static IEnumerable<string> Faults(StockBoard stock, Polygon shape)
    {
        NetTopologySuite.Geometries.Geometry inner = shape.Buffer(-NearMm);
        foreach (BoardFault fault in stock.Faults)
        {
            var box = Nts.ToGeometry(
                new Envelope(
                    fault.FromMm,
                    fault.ToMm,
                    fault.LowMm ?? -1,
                    fault.HighMm ?? (stock.WidthMm + 1)
                )
            );
            if (inner.Intersects(box))
            {
                yield return $"has the fault at {fault.FromMm} mm in it";
            }
        }
    }

    private static double Angle(Vec2 v) => Math.Atan2(v.Y, v.X);

    public static Polygon Shape(IReadOnlyList<Vec2> outline) =>
        Nts.CreatePolygon([.. outline.Append(outline[0]).Select(p => new Coordinate(p.X, p.Y))]);
}
