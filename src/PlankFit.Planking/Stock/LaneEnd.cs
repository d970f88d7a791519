using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Stock;

/// <summary>A piece in its lane, in the frame of the board, taken apart into its sides.</summary>
internal sealed record LanePiece(
    PieceId Id,
    ImmutableArray<Vec2> Outline,
    ImmutableArray<PieceSide> Sides
)
{
    public static LanePiece Of(LaidPiece laid, BoardFrame frame, SawTolerances tolerances)
    {
        ImmutableArray<Vec2> outline = frame.Of(laid);
        return new(laid.Piece.Id, outline, PieceSides.Of(outline, tolerances));
    }

    /// <summary>A straight kerf that clears it clears the piece.</summary>
    public ImmutableArray<Vec2> Hull { get; } = ConvexHull.Of(Outline);
}

/// <summary>The cut that makes an end of a piece, or an edge, and how the pieces of the lane lie to it when it is carried on straight.</summary>
/// <param name="Cut">As far as the end itself goes.</param>
/// <param name="Across">An end carried on to both edges of the lane, or off the board before that; an edge as it is.</param>
/// <param name="Behind">Pieces on the side of the one that it makes, itself among them.</param>
/// <param name="Beyond">Pieces on the other side, a kerf away.</param>
internal sealed record LaneEnd(
    SawCut Cut,
    SawCut Across,
    ImmutableHashSet<PieceId> Behind,
    ImmutableHashSet<PieceId> Beyond
)
{
    /// <summary>A hair over a line is on it, mm: outlines are thinned by less when they are laid.</summary>
    private const double HairMm = 0.05;

    /// <summary>Carried on it enters none of the pieces.</summary>
    public bool IsClear(IEnumerable<LanePiece> pieces) =>
        pieces.All(p => Behind.Contains(p.Id) || Beyond.Contains(p.Id));

    /// <summary>As it is drawn: carried on, but not through a piece that was parted from it before.</summary>
    public SawCut Made(IEnumerable<LanePiece> lane) =>
        IsClear(lane) ? Across : Cut with { Kind = Across.Kind };

    /// <summary>The cut that makes an end; null where the board's own end is it.</summary>
    public static LaneEnd? Of(
        LaneAtSaw lane,
        LanePiece piece,
        PieceSide side,
        IReadOnlyList<LanePiece> all
    )
    {
        bool straight = side.OffMm <= lane.Tolerances.StraightMm,
            far = side.Kind == SideKind.Far;
        Vec2 shift = straight ? side.Foot - side.From : new(0, 0),
            from = side.From + shift,
            to = side.To + shift;
        double own = far ? lane.Frame.LengthMm : lane.Frame.BeginsMm;
        if (
            Math.Abs(from.X - own) <= lane.Tolerances.StraightMm
            && Math.Abs(to.X - own) <= lane.Tolerances.StraightMm
        )
        {
            return null;
        }

        SawCut cut = SawCut.Straight(
            CutKind.Stopped,
            from,
            to,
            far ? lane.KerfMm : -lane.KerfMm
        ) with
        {
            Lane = lane.Number,
            EndOf = far ? piece.Id : null,
            BeginOf = far ? null : piece.Id,
            ToTheLine = !straight,
            OffMm = side.OffMm,
            Line = straight ? [from, to] : side.Points,
        };
        Vec2 slope = (to - from) / (to.Y - from.Y),
            low = OnBoard(lane.Frame, from, slope, lane.Lane.LowMm),
            high = OnBoard(lane.Frame, from, slope, lane.Lane.HighMm);
        SawCut across = cut with
        {
            Kind = CutKind.Crosscut,
            From = low,
            To = high,
            Line = straight ? [low, high] : side.Points,
        };
        return Of(cut, across, piece, side, all, lane.KerfMm);
    }

    /// <summary>The cut along a piece whose edge is not its lane's; null where it is.</summary>
    public static LaneEnd? OfEdge(
        LaneAtSaw lane,
        LanePiece piece,
        PieceSide side,
        IReadOnlyList<LanePiece> all
    )
    {
        double edge = side.Kind == SideKind.Low ? lane.Lane.LowMm : lane.Lane.HighMm;
        if (side.Points.All(p => Math.Abs(p.Y - edge) <= lane.Tolerances.EdgeMm))
        {
            return null;
        }

        bool straight = side.OffMm <= lane.Tolerances.StraightMm;
        Vec2 shift = straight ? side.Foot - side.From : new(0, 0),
            from = side.From + shift,
            to = side.To + shift;
        // A saw wants wood on both sides of it: what is less than a kerf is planed off, as it is of a lane.
        double mostMm = (straight ? [from, to] : side.Points).Max(p => Math.Abs(p.Y - edge));
        bool planed = mostMm < lane.KerfMm - lane.Tolerances.SharedMm;
        double takenMm = planed ? mostMm : lane.KerfMm;
        SawCut cut = SawCut.Straight(
            CutKind.Edge,
            from,
            to,
            side.Kind == SideKind.High ? takenMm : -takenMm
        ) with
        {
            IsPlaned = planed,
            Lane = lane.Number,
            EndOf = piece.Id,
            ToTheLine = !straight,
            OffMm = side.OffMm,
            Line = straight ? [from, to] : side.Points,
        };
        return Of(cut, cut, piece, side, all, lane.KerfMm);
    }

    /// <summary>
    /// A line that is followed bulges beyond its chord, and what it makes lies behind the furthest of it; carried on it is the chord, and others lie behind that.
    /// </summary>
    private static LaneEnd Of(
        SawCut cut,
        SawCut across,
        LanePiece made,
        PieceSide side,
        IReadOnlyList<LanePiece> all,
        double kerf
    )
    {
        ILookup<int, PieceId> where = all.ToLookup(
            q =>
                Where(q, side.Foot, side.Outward, kerf) is var whole
                && whole == -1
                && q.Id != made.Id
                    ? Where(q, cut.From, side.Outward, kerf)
                    : whole,
            q => q.Id
        );
        return new(cut, across, [.. where[-1]], [.. where[1]]);
    }

    /// <summary>-1 where a piece lies behind a line, 1 a kerf beyond it, 0 in its way.</summary>
    public static int Where(LanePiece q, Vec2 on, Vec2 outward, double kerf)
    {
        double least = double.PositiveInfinity,
            most = double.NegativeInfinity;
        foreach (Vec2 p in q.Hull)
        {
            double d = (p - on).Dot(outward);
            (least, most) = (Math.Min(least, d), Math.Max(most, d));
        }

        return most <= HairMm ? -1
            : least >= kerf - HairMm ? 1
            : 0;
    }

    /// <summary>Where a line comes to an edge of its lane, or off the board before that.</summary>
    public static Vec2 OnBoard(BoardFrame frame, Vec2 on, Vec2 slope, double y)
    {
        Vec2 at = on + ((y - on.Y) * slope);
        double x = Math.Clamp(at.X, frame.BeginsMm, frame.LengthMm);
        return x == at.X ? new(at.X, y) : new(x, on.Y + ((x - on.X) / slope.X));
    }

    /// <summary>Two ends a kerf apart all along are parted by one cut, on the line of the first: the kerf falls beyond it.</summary>
    public static ImmutableArray<LaneEnd> Shared(
        IReadOnlyList<LaneEnd> ends,
        double kerf,
        SawTolerances tolerances
    )
    {
        var taken = new HashSet<LaneEnd>(ReferenceEqualityComparer.Instance);
        ImmutableArray<LaneEnd>.Builder made = ImmutableArray.CreateBuilder<LaneEnd>();
        foreach (LaneEnd end in ends.Where(e => e.Cut.EndOf is not null))
        {
            LaneEnd? other = ends.FirstOrDefault(e =>
                e.Cut.BeginOf is { } begins
                && end.Beyond.Contains(begins)
                && !taken.Contains(e)
                && Parted(end.Across, e.Across, kerf, tolerances)
            );
            if (other is null)
            {
                made.Add(end);
                continue;
            }

            taken.Add(other);
            SawCut Both(SawCut cut) =>
                cut with
                {
                    BeginOf = other.Cut.BeginOf,
                    OffMm = Math.Max(cut.OffMm, other.Cut.OffMm),
                };
            made.Add(end with { Cut = Both(end.Cut), Across = Both(end.Across) });
        }

        made.AddRange(ends.Where(e => e.Cut.EndOf is null && !taken.Contains(e)));
        return made.ToImmutable();
    }

    private static bool Parted(SawCut end, SawCut begin, double kerf, SawTolerances tolerances)
    {
        if (end.ToTheLine || begin.ToTheLine)
        {
            return false;
        }

        Vec2 beyond = -1 * (end.To - end.From).Unit().Left();
        return new[] { begin.From, begin.To }.All(p =>
            Math.Abs((p - end.From).Dot(beyond) - kerf) <= tolerances.SharedMm
        );
    }
}
