using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>What the saw does to one board: its rips, then every end and edge of every piece as it lies, ends a kerf apart as one cut.</summary>
public static class BoardCuts
{
    /// <summary>So many lanes are sawn together.</summary>
    public const int LanesTogether = 4;

    public static BoardCutList Of(SawnBoard board, NestSpec spec)
    {
        var frame = new BoardFrame(board.Stock);
        ImmutableArray<SawnLane> lanes = Lanes(board, frame);
        ImmutableArray<SawCut> rips = BoardRips.Of(frame, lanes, spec.KerfMm, spec.Saw);
        return EmptyEnd.Best(
            spec,
            Of(
                board,
                spec,
                [.. CutOrder.Rips(rips, 0, frame.WidthMm)],
                [.. lanes.Select(_ => LaneSpan.Of(frame))]
            ),
            (first, reach) => Of(board, spec, first, reach)
        );
    }

    /// <param name="first">What parts the board into its lanes.</param>
    /// <param name="reach">From where to where that leaves each of them.</param>
    private static BoardCutList Of(
        SawnBoard board,
        NestSpec spec,
        ImmutableArray<SawCut> first,
        ImmutableArray<LaneSpan> reach
    )
    {
        var frame = new BoardFrame(board.Stock);
        ImmutableArray<SawnLane> lanes = Lanes(board, frame);
        double usable =
            frame.LengthMm
            - (board.Stock.GrainAcross ? spec.EdgeMm : spec.EndMm + board.Stock.OtherEndMm);
        ImmutableArray<SawCut>.Builder cuts = ImmutableArray.CreateBuilder<SawCut>();
        ImmutableArray<PiecePlace>.Builder places = ImmutableArray.CreateBuilder<PiecePlace>();
        cuts.AddRange(first);
        var benches = new LaneBench[lanes.Length];
        for (int l = 0; l < lanes.Length; l++)
        {
            ImmutableArray<LanePiece> pieces =
            [
                .. lanes[l]
                    .PieceIds.Select(id => board.Pieces.First(p => p.Piece.Id == id))
                    .Select(p => LanePiece.Of(p, frame, spec.Saw)),
            ];
            int lane = l;
            benches[l] = Bench(
                LaneAtSaw.Of(
                    frame with
                    {
                        BeginsMm = reach[l].FromMm,
                        EndsMm = reach[l].ToMm,
                    },
                    lanes[l],
                    l,
                    spec
                ),
                pieces
            );
            places.AddRange(pieces.Select(p => Place(p, lane, usable)));
        }

        // A few lanes lie side by side; of many, each is sawn by itself, as its sheet shows it.
        cuts.AddRange(
            lanes.Length <= LanesTogether
                ? CutOrder.Across(benches)
                : benches.SelectMany(b => CutOrder.Across([b]))
        );
        return new(
            board,
            frame,
            lanes,
            [.. cuts.Select((c, i) => c with { Number = i + 1 })],
            places.ToImmutable(),
            frame.CutOuts
        )
        {
            Spec = spec,
            LaneBeginsMm = [.. reach.Select(r => r.FromMm)],
            LaneEndsMm = [.. reach.Select(r => r.ToMm)],
        };
    }

    /// <summary>A board that is not ripped is one lane.</summary>
    internal static ImmutableArray<SawnLane> Lanes(SawnBoard board, BoardFrame frame) =>
        board.Lanes.IsEmpty
            ? [new(0, frame.WidthMm, [.. board.Pieces.Select(p => p.Piece.Id)])]
            : board.Lanes;

    /// <summary>What is sawn in one lane when it is ripped free.</summary>
    internal static ImmutableArray<SawCut> OfLane(LaneAtSaw lane, IEnumerable<LaidPiece> pieces) =>
        [
            .. CutOrder.Across([
                Bench(lane, [.. pieces.Select(p => LanePiece.Of(p, lane.Frame, lane.Tolerances))]),
            ]),
        ];

    private static PiecePlace Place(LanePiece piece, int lane, double usable)
    {
        double to = piece.Outline.Max(p => p.X);
        return new(piece.Id, lane, piece.Outline.Min(p => p.X), to, Math.Max(0, usable - to));
    }

    private static LaneBench Bench(LaneAtSaw lane, ImmutableArray<LanePiece> pieces)
    {
        var ends = new List<LaneEnd>();
        var edges = new List<LaneEnd>();
        foreach (
            (LanePiece piece, PieceSide side) in pieces.SelectMany(p => p.Sides.Select(s => (p, s)))
        )
        {
            bool isEnd = side.Kind is SideKind.Far or SideKind.Near;
            LaneEnd? made = isEnd
                ? LaneEnd.Of(lane, piece, side, pieces)
                : LaneEnd.OfEdge(lane, piece, side, pieces);
            if (made is not null)
            {
                (isEnd ? ends : edges).Add(made);
            }
        }

        return new(
            LaneEnd.Shared(ends, lane.KerfMm, lane.Tolerances),
            edges,
            pieces,
            lane,
            (before, after, mayRip) => Parting.Between(before, after, mayRip, pieces, lane)
        );
    }
}
