using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>
/// Ends that are left long are sawn at their neighbour's angle, a kerf away from it, where that leaves no less than was asked: one cut makes two ends. They only
/// ever grow, into what would be waste; pieces stay where they lie, and ends that are fit as they are.
/// </summary>
public static class TurnedEnds
{
    /// <summary>An end left long grows by no more than this (our own rule, no source): what is trimmed in place has to be held and sawn there.</summary>
    internal const double MostMoreMm = 75;

    /// <summary>An edge is carried on straight, in its direction over so much of its length, mm.</summary>
    private const double StraightMm = 30;
    private const double NearMm = 1e-6;

    /// <summary>Pieces lie a kerf apart to this, mm: outlines are rounded.</summary>
    private const double KerfNoiseMm = 1e-3;

    public static SawnBoard Of(SawnBoard board, NestSpec spec)
    {
        var frame = new BoardFrame(board.Stock);
        ImmutableArray<SawnLane> lanes = BoardCuts.Lanes(board, frame);
        var laid = board.Pieces.ToDictionary(p => p.Piece.Id);
        for (int l = 0; l < lanes.Length; l++)
        {
            var lane = LaneAtSaw.Of(frame, lanes[l], l, spec);
            LaidPiece[] row = [.. lanes[l].PieceIds.Select(id => laid[id])];
            if (row.All(p => p.Piece.LongEnds.IsEmpty))
            {
                continue;
            }

            ImmutableArray<SawCut> cuts = BoardCuts.OfLane(lane, row);
            for (int i = 0; i + 1 < row.Length; i++)
            {
                foreach (
                    (LaidPiece one, LaidPiece next) in Turned(row[i], row[i + 1], lane, spec)
                        .ToArray()
                )
                {
                    LaidPiece[] tried = [.. row];
                    (tried[i], tried[i + 1]) = (one, next);
                    ImmutableArray<SawCut> fewer = BoardCuts.OfLane(lane, tried);
                    if (
                        fewer.Length < cuts.Length
                        && fewer.Count(c => c.Kind == CutKind.Stopped)
                            <= cuts.Count(c => c.Kind == CutKind.Stopped)
                        && AreApart(
                            [one, next],
                            [
                                .. laid.Values.Where(p =>
                                    !tried.Any(t => t.Piece.Id == p.Piece.Id)
                                ),
                                .. tried,
                            ],
                            spec.KerfMm
                        )
                    )
                    {
                        (row, cuts) = (tried, fewer);
                    }
                }
            }

            foreach (LaidPiece piece in row)
            {
                laid[piece.Piece.Id] = piece;
            }
        }

        return board with
        {
            Pieces = [.. board.Pieces.Select(p => laid[p.Piece.Id])],
        };
    }

    /// <summary>Whether pieces are a kerf away from all others: what an end was turned to is straight to within what the saw is trusted with, and no straighter.</summary>
    private static bool AreApart(
        IEnumerable<LaidPiece> turned,
        IReadOnlyList<LaidPiece> all,
        double kerf
    ) =>
        turned.All(one =>
            all.All(other => other.Piece.Id == one.Piece.Id || IsApart(one, other, kerf))
        );

    private static bool IsApart(LaidPiece one, LaidPiece other, double kerf)
    {
        ImmutableArray<Vec2> own = one.Outline,
            theirs = other.Outline;
        BoardBox a = BoardBox.Around(own).Grown(kerf),
            b = BoardBox.Around(theirs);
        if (a.X0 > b.X1 || a.X1 < b.X0 || a.Y0 > b.Y1 || a.Y1 < b.Y0)
        {
            return true;
        }

        static Vec3 At(ImmutableArray<Vec2> outline, int i) =>
            new(outline[i % outline.Length].X, outline[i % outline.Length].Y, 0);
        return Enumerable
            .Range(0, own.Length)
            .All(i =>
                Enumerable
                    .Range(0, theirs.Length)
                    .All(j =>
                        SegmentDistance.Between(
                            At(own, i),
                            At(own, i + 1),
                            At(theirs, j),
                            At(theirs, j + 1)
                        )
                        >= kerf - KerfNoiseMm
                    )
            );
    }

    /// <summary>Two neighbours, one of them or both with the end between them turned.</summary>
    private static IEnumerable<(LaidPiece One, LaidPiece Next)> Turned(
        LaidPiece one,
        LaidPiece next,
        LaneAtSaw lane,
        NestSpec spec
    )
    {
        LanePiece a = LanePiece.Of(one, lane.Frame, lane.Tolerances),
            b = LanePiece.Of(next, lane.Frame, lane.Tolerances);
        PieceSide? far = Only(a, SideKind.Far),
            near = Only(b, SideKind.Near);
        if (far is null || near is null)
        {
            yield break;
        }

        double kerf = lane.KerfMm;
        EndInLane first = new(one, a, far),
            second = new(next, b, near);
        // To the other's end as it is; where both are left long, to the cut that parts them as they are.
        if (
            near.OffMm <= lane.Tolerances.StraightMm
            && At(first, near.Foot + (kerf * near.Outward), -1 * near.Outward, lane, spec)
                is { } longer
        )
        {
            yield return (longer, next);
        }

        if (
            far.OffMm <= lane.Tolerances.StraightMm
            && At(second, far.Foot + (kerf * far.Outward), -1 * far.Outward, lane, spec)
                is { } begun
        )
        {
            yield return (one, begun);
        }

        if (Parting.Between([a], [b], false, [a, b], lane) is { Across: { } cut })
        {
            Vec2 way = -1 * (cut.To - cut.From).Unit().Left();
            if (
                At(first, cut.From, way, lane, spec) is { } before
                && At(second, cut.From + (kerf * way), -1 * way, lane, spec) is { } after
            )
            {
                yield return (before, after);
            }
        }
    }

    /// <summary>An end of a piece, as it lies in the board and in its lane.</summary>
    private readonly record struct EndInLane(LaidPiece Laid, LanePiece Piece, PieceSide Side);

    private static PieceSide? Only(LanePiece piece, SideKind kind)
    {
        PieceSide[] sides = [.. piece.Sides.Where(s => s.Kind == kind)];
        return sides.Length == 1 ? sides[0] : null;
    }

    /// <summary>A piece with an end on a given line; null where that is not an end left long, or would leave too little or too much, or has no room.</summary>
    /// <param name="outward">Square to the line, away from the piece.</param>
    private static LaidPiece? At(
        EndInLane turned,
        Vec2 on,
        Vec2 outward,
        LaneAtSaw lane,
        NestSpec spec
    )
    {
        (LaidPiece laid, LanePiece piece, PieceSide side) = turned;
        BoardFrame frame = lane.Frame;
        bool far = side.Kind == SideKind.Far;
        LongEnd? end = laid
            .Piece.LongEnds.Where(e =>
                frame.Turned(laid.TurnedBy(e.Outward)).Dot(side.Outward) > 0.9
            )
            .FirstOrDefault();
        // Sides go from the marked edge up, edges from the beginning on.
        PieceSide? low = Only(piece, SideKind.Low),
            high = Only(piece, SideKind.High);
        if (
            end is null
            || low is null
            || high is null
            || (far ? low.To : low.From) != side.From
            || (far ? high.To : high.From) != side.To
        )
        {
            return null;
        }

        Vec2? lower = Carried(low, far, on, outward),
            upper = Carried(high, far, on, outward);
        if (lower is not { } p || upper is not { } q)
        {
            return null;
        }

        ImmutableArray<Vec2> added = [side.From, side.To, q, p];
        double least = Math.Min(
                end.Beyond(laid.FromBoard(frame.OnBoard(p))),
                end.Beyond(laid.FromBoard(frame.OnBoard(q)))
            ),
            most = Math.Max(
                end.Beyond(laid.FromBoard(frame.OnBoard(p))),
                end.Beyond(laid.FromBoard(frame.OnBoard(q)))
            );
        if (
            least < end.LeastMm - NearMm
            || most > end.ByMm + MostMoreMm
            || !HasRoom(added, frame, lane.Lane, spec)
        )
        {
            return null;
        }

        // The outline as it lies, its end taken off and made anew.
        List<Vec2> outline =
        [
            .. piece.Outline.Where(v => v == side.From || v == side.To || !side.Points.Contains(v)),
        ];
        int from = outline.IndexOf(side.From),
            to = outline.IndexOf(side.To);
        (outline[from], outline[to]) = (p, q);
        IEnumerable<Vec2> own = outline.Select(v => laid.FromBoard(frame.OnBoard(v)));
        return laid with
        {
            Sawn = laid.FaceDown ? [.. own.Reverse()] : [.. own],
            Long = [.. laid.Long.Where(s => s.Far != far), new(far, least, most)],
        };
    }

    /// <summary>Where an edge carried on straight comes to a line; null where it has gone past it already.</summary>
    private static Vec2? Carried(PieceSide edge, bool far, Vec2 on, Vec2 outward)
    {
        Vec2[] points = far ? [.. edge.Points.Reverse()] : [.. edge.Points];
        Vec2 back = points.FirstOrDefault(v => v.ChordTo(points[0]) >= StraightMm, points[^1]),
            way = (points[0] - back).Unit();
        double towards = way.Dot(outward),
            left = (on - points[0]).Dot(outward);
        return towards <= 0.1 || left < -NearMm ? null : points[0] + (left / towards * way);
    }

    /// <summary>In its lane, on the usable board, and clear of faults.</summary>
    private static bool HasRoom(
        ImmutableArray<Vec2> added,
        BoardFrame frame,
        SawnLane lane,
        NestSpec spec
    )
    {
        double x0 = added.Min(v => v.X),
            x1 = added.Max(v => v.X),
            y0 = added.Min(v => v.Y),
            y1 = added.Max(v => v.Y),
            begin = frame.Stock.GrainAcross ? spec.EdgeMm : spec.EndMm;
        return y0 >= lane.LowMm - NearMm
            && y1 <= lane.HighMm + NearMm
            && x0 >= begin
            && x1 <= frame.LengthMm - begin
            && frame.CutOuts.All(c =>
                c.FromMm >= x1 || c.ToMm <= x0 || c.LowMm >= y1 || c.HighMm <= y0
            )
            && frame.Stock.Faults.All(f => !IsIn(f, frame, x0, x1, y0, y1));
    }

    /// <summary>A fault of no length, as a knot told by its middle is, is one as well, and at the end that grows it would come into the piece.</summary>
    private static bool IsIn(
        BoardFault fault,
        BoardFrame frame,
        double x0,
        double x1,
        double y0,
        double y1
    )
    {
        Vec2 a = frame.Of(new Vec2(fault.FromMm, fault.LowMm ?? 0)),
            b = frame.Of(new Vec2(fault.ToMm, fault.HighMm ?? frame.Stock.WidthMm));
        return Math.Min(a.X, b.X) <= x1 + NearMm
            && Math.Max(a.X, b.X) >= x0 - NearMm
            && Math.Min(a.Y, b.Y) < y1
            && Math.Max(a.Y, b.Y) > y0;
    }
}
