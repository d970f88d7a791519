using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>What the saw does to one board: its rips, then every end and edge of every piece as it lies, ends a kerf apart as one cut.</summary>
public static class BoardCuts
{
    public static BoardCutList Of(SawnBoard board, NestSpec spec)
    {
        SawTolerances tolerances = spec.Saw;
        var frame = new BoardFrame(board.Stock);
        ImmutableArray<SawnLane> lanes = board.Lanes.IsEmpty
            ? [new(0, frame.WidthMm, [.. board.Pieces.Select(p => p.Piece.Id)])]
            : board.Lanes;
        double usable =
            frame.LengthMm
            - (board.Stock.GrainAcross ? spec.EdgeMm : spec.EndMm + board.Stock.OtherEndMm);
        var cuts = ImmutableArray.CreateBuilder<SawCut>();
        var places = ImmutableArray.CreateBuilder<PiecePlace>();
        cuts.AddRange(
            CutOrder.Rips(BoardRips.Of(frame, lanes, spec.KerfMm, tolerances), frame.WidthMm)
        );
        for (int l = 0; l < lanes.Length; l++)
        {
            LanePiece[] pieces =
            [
                .. lanes[l]
                    .PieceIds.Select(id => board.Pieces.First(p => p.Piece.Id == id))
                    .Select(p => LanePiece.Of(p, frame, tolerances)),
            ];
            int lane = l;
            LaneEnd[] ends =
            [
                .. pieces.SelectMany(p =>
                    p.Sides.Where(s => s.Kind is SideKind.Far or SideKind.Near)
                        .Select(s =>
                            LaneEnd.Of(
                                frame,
                                lanes[lane],
                                lane,
                                p,
                                s,
                                pieces,
                                spec.KerfMm,
                                tolerances
                            )
                        )
                        .OfType<LaneEnd>()
                ),
            ];
            (ImmutableArray<SawCut> across, ImmutableArray<SawCut> stopped) = CutOrder.Across(
                LaneEnd.Shared(ends, spec.KerfMm, tolerances),
                [.. pieces],
                frame.LengthMm,
                (a, b, part) =>
                    Parting.Between(a, b, part, frame, lanes[lane], lane, spec.KerfMm, tolerances)
            );
            cuts.AddRange(across);
            cuts.AddRange(
                pieces.SelectMany(p => Edges(p, lanes[lane], lane, spec.KerfMm, tolerances))
            );
            cuts.AddRange(stopped);
            places.AddRange(pieces.Select(p => Place(p, lane, usable)));
        }

        return new(
            board,
            frame,
            lanes,
            [.. cuts.Select((c, i) => c with { Number = i + 1 })],
            places.ToImmutable(),
            frame.CutOuts
        );
    }

    private static PiecePlace Place(LanePiece piece, int lane, double usable)
    {
        double to = piece.Outline.Max(p => p.X);
        return new(piece.Id, lane, piece.Outline.Min(p => p.X), to, Math.Max(0, usable - to));
    }

    /// <summary>What is sawn along a piece because its edge is not its lane's.</summary>
    private static IEnumerable<SawCut> Edges(
        LanePiece piece,
        SawnLane lane,
        int number,
        double kerf,
        SawTolerances tolerances
    )
    {
        foreach (PieceSide side in piece.Sides.Where(s => s.Kind is SideKind.Low or SideKind.High))
        {
            double edge = side.Kind == SideKind.Low ? lane.LowMm : lane.HighMm;
            if (side.Points.All(p => Math.Abs(p.Y - edge) <= tolerances.EdgeMm))
            {
                continue;
            }

            bool straight = side.OffMm <= tolerances.StraightMm;
            Vec2 shift = straight ? side.Foot - side.From : new(0, 0),
                from = side.From + shift,
                to = side.To + shift;
            yield return new(
                0,
                CutKind.Edge,
                number,
                piece.Id,
                null,
                from,
                to,
                !straight,
                side.OffMm,
                side.Kind == SideKind.High ? kerf : -kerf,
                straight ? [from, to] : side.Points
            );
        }
    }
}
