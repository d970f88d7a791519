using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Sheathing;

/// <summary>Pieces out of rolls and part rolls: packed as if on one endless roll, then the stretches between which no piece lies shared out over rolls.</summary>
internal static class RollPlanner
{
    /// <summary>Shorter or narrower than this nothing is kept by name, mm. A proposal, no source.</summary>
    private const double LeastOffcutMm = 150;

    public static RollPlan Of(ClothSpec cloth, IReadOnlyList<ClothPiece> pieces)
    {
        double width = cloth.WidestMm;
        ClothRoll[] rolls = [.. cloth.Rolls.Where(r => r.WidthMm >= width - 0.01)];
        double longest = rolls.Max(r => r.LengthMm);
        ClothPiece[] fit = [.. pieces.Where(p => p.LengthMm <= longest + 1e-6)];
        Facing? up = pieces.Select(p => p.Face).FirstOrDefault(f => f is not null);
        RollWay[][] ways = [.. fit.Select(p => RollPacking.Ways(p.Outline, width, Over(p)))];
        Shares best = Ways(ways)
            .Where((w, i) => i > 0 || w.All(s => s.LengthMm <= longest + 1e-6))
            .Select(w => Shared(rolls, w))
            .Append(Filled(rolls, fit, ways))
            .OrderBy(w => w.Left.Count)
            .ThenBy(w => w.Rolls.Sum(r => r.OnHand ? 0 : r.Roll.Price ?? r.Roll.LengthMm))
            .ThenBy(w => w.Rolls.Where(r => !r.OnHand).Sum(r => r.Has.Sum(h => h.LengthMm)))
            .ThenBy(w => w.Rolls.Sum(r => r.Has.Sum(h => h.LengthMm)))
            .First();
        int number = 0;

        // A piece whose face lies the other way on the boat than that of the first is cut from the same roll as its mirror image.
        bool[] Over(ClothPiece piece) =>
            piece.Face is { } face ? [face != up]
            : cloth.MayTurnOver ? [false, true]
            : [false];

        return new(
            cloth,
            width,
            [.. best.Rolls.Select(s => Cut(++number, s.Roll, s.OnHand, s.Has, fit, width))],
            pieces.Sum(p => p.AreaMm2) / width,
            [.. pieces.Except(fit), .. best.Left.Select(p => fit[p])]
        )
        {
            Unrolled = up,
        };
    }

    /// <summary>Pieces that lie beside or into each other, from where nothing before them reaches to where nothing after them does.</summary>
    private sealed record Stretch(
        ImmutableArray<PackedPiece> Pieces,
        double FromMm,
        double LengthMm
    );

    /// <summary>Pieces into each other as far as they will, and each by itself, which fits short rolls better.</summary>
    private static IEnumerable<Stretch[]> Ways(RollWay[][] ways)
    {
        yield return [.. Divided(RollPacking.Of(ways).Pieces)];
        yield return
        [
            .. ways.SelectMany(
                (w, i) => Divided([.. RollPacking.Of([w]).Pieces.Select(q => q with { Piece = i })])
            ),
        ];
    }

    private static IEnumerable<Stretch> Divided(ImmutableArray<PackedPiece> packed)
    {
        const double apartMm = 1e-6;
        List<PackedPiece> now = [];
        double from = 0,
            reach = 0;
        foreach (
            PackedPiece piece in packed.OrderBy(p => p.Outline.Min(q => q.X)).ThenBy(p => p.Piece)
        )
        {
            double begins = piece.Outline.Min(p => p.X),
                ends = piece.Outline.Max(p => p.X);
            if (now.Count > 0 && begins >= reach - apartMm)
            {
                yield return new([.. now], from, reach - from);
                now = [];
            }

            from = now.Count == 0 ? begins : from;
            reach = Math.Max(now.Count == 0 ? ends : reach, ends);
            now.Add(piece);
        }

        if (now.Count > 0)
        {
            yield return new([.. now], from, reach - from);
        }
    }

    /// <summary>What comes off which roll, and the numbers of the pieces that found none.</summary>
    private sealed record Shares(
        List<(ClothRoll Roll, bool OnHand, List<Stretch> Has)> Rolls,
        List<int> Left
    );

    /// <summary>Which stretch comes off which roll: as few pieces left without as may be, then the least paid, then the least of it off bought rolls.</summary>
    private static Shares Shared(ClothRoll[] rolls, Stretch[] stretches)
    {
        RollShare[] shares = RollSharing.Of(
            rolls,
            [.. stretches.Select(s => new RollPart(s.LengthMm, s.Pieces.Length))]
        );
        return new(
            [
                .. shares
                    .Where(s => s.Roll is not null)
                    .Select(s =>
                        (
                            s.Roll!,
                            s.OnHand,
                            s.Parts.Select(i => stretches[i]).OrderBy(t => t.FromMm).ToList()
                        )
                    ),
            ],
            [
                .. shares
                    .Where(s => s.Roll is null)
                    .SelectMany(s => s.Parts.SelectMany(i => stretches[i].Pieces))
                    .Select(q => q.Piece),
            ]
        );
    }

    /// <summary>Roll after roll filled with as many pieces as go into each other on it, the longest first.</summary>
    private static Shares Filled(ClothRoll[] rolls, ClothPiece[] pieces, RollWay[][] ways)
    {
        List<int> left =
        [
            .. Enumerable.Range(0, pieces.Length).OrderByDescending(i => pieces[i].AreaMm2),
        ];
        List<(ClothRoll, bool, List<Stretch>)> shared = [];
        foreach ((ClothRoll roll, bool onHand) in RollSharing.InTurn(rolls, pieces.Length))
        {
            List<int> has = [];
            ImmutableArray<PackedPiece> packed = [];
            foreach (int piece in left)
            {
                int[] tried = [.. has, piece];
                (ImmutableArray<PackedPiece> laid, double length) = RollPacking.Of([
                    .. tried.Select(i => ways[i]),
                ]);
                if (length <= roll.LengthMm + 1e-6)
                {
                    has.Add(piece);
                    packed = [.. laid.Select(p => p with { Piece = tried[p.Piece] })];
                }
            }

            if (has.Count > 0)
            {
                left.RemoveAll(has.Contains);
                shared.Add((roll, onHand, [.. Divided(packed)]));
            }
        }

        return new(shared, left);
    }

    private static CutRoll Cut(
        int number,
        ClothRoll roll,
        bool onHand,
        List<Stretch> stretches,
        ClothPiece[] pieces,
        double width
    )
    {
        ImmutableArray<PieceOnRoll>.Builder laid = ImmutableArray.CreateBuilder<PieceOnRoll>();
        ImmutableArray<ClothOffcut>.Builder offcuts = ImmutableArray.CreateBuilder<ClothOffcut>();
        double at = 0;
        foreach (Stretch stretch in stretches)
        {
            Vec2 shift = new(at - stretch.FromMm, 0);
            foreach (PackedPiece p in stretch.Pieces)
            {
                laid.Add(
                    new(
                        pieces[p.Piece],
                        p.Turned,
                        p.Over,
                        p.At + shift,
                        [.. p.Outline.Select(q => q + shift)]
                    )
                );
            }

            double top = stretch.Pieces.Max(p => p.Outline.Max(q => q.Y));
            if (width - top >= LeastOffcutMm && stretch.LengthMm >= LeastOffcutMm)
            {
                offcuts.Add(
                    new(
                        $"R{number}-{(char)('a' + Math.Min(offcuts.Count, 25))}",
                        new(at, top),
                        stretch.LengthMm,
                        width - top
                    )
                );
            }

            at += stretch.LengthMm;
        }

        return new(number, roll, onHand, laid.ToImmutable(), at, offcuts.ToImmutable());
    }
}
