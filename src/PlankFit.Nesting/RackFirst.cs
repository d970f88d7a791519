using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Nesting;

/// <summary>
/// The rack first: only what its boards cannot give is laid out in boards to be bought. Where the least cost is asked for, prices decide between rack and yard.
/// </summary>
internal static class RackFirst
{
    /// <summary>A rack with so much more area than the pieces will most likely serve, and is given all the time.</summary>
    private const double Ample = 1.2;

    public static NestedShare Of(
        NestSpec spec,
        StockShare share,
        LengthUnit units,
        IProgress<NestProgress> progress,
        CancellationToken enough,
        CancellationToken soon
    )
    {
        StockShare rack = share.Only(onHand: true),
            yard = share.Only(onHand: false);
        if (spec.Objective == NestObjective.Cost || rack.Sorts.IsEmpty || yard.Sorts.IsEmpty)
        {
            return ShareNesting.Of(spec, share, units, progress, enough);
        }

        double pieces = share.Pieces.Sum(p => p.AreaMm2),
            boards = rack.Sorts.Sum(s => s.Sum(b => b.AreaMm2 * (b.Count ?? 1)));
        using var first = CancellationTokenSource.CreateLinkedTokenSource(
            enough,
            boards >= Ample * pieces ? CancellationToken.None : soon
        );
        (StockShare served, ImmutableArray<SawPiece> unserved) = rack.Served(spec);
        NestedShare fromRack = ShareNesting.Of(spec, served, units, progress, first.Token);
        ImmutableArray<SawPiece> left = [.. unserved, .. fromRack.Unplaced.Select(u => u.Piece)];
        if (left.IsEmpty)
        {
            return fromRack;
        }

        (StockShare bought, ImmutableArray<SawPiece> none) = (yard with { Pieces = left }).Served(
            spec
        );
        NestedShare fromYard = bought.Pieces.IsEmpty
            ? NestedShare.Nothing
            : ShareNesting.Of(spec, bought, units, progress, enough);
        return new(
            [.. fromRack.Materials, .. fromYard.Materials],
            [.. fromRack.Boards, .. fromYard.Boards],
            [
                .. fromYard.Unplaced,
                .. none.Select(p => new UnplacedPiece(p, Wants.Room(spec, share, p, units))),
            ],
            [.. fromRack.Apart, .. fromYard.Apart]
        );
    }
}
