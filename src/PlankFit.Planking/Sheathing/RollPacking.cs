using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Sheathing;

/// <summary>A piece where it lies on its length of roll.</summary>
/// <param name="Turned">Turned end for end.</param>
/// <param name="Over">The other face up.</param>
/// <param name="At">Of its lower left corner: along the roll, and across it.</param>
public readonly record struct PackedPiece(
    int Piece,
    bool Turned,
    bool Over,
    Vec2 At,
    ImmutableArray<Vec2> Outline
);

/// <summary>
/// Pieces one after the other along a roll, as near as their shapes let them: each is pushed against those before it at every height. A beam search over which comes
/// next, how it is turned and how high it lies, by what is wasted behind it; then each is pushed on exactly. What the area takes of the roll is a bound of any plan.
/// </summary>
public static class RollPacking
{
    /// <summary>Heights at which the search looks how far the roll is taken up.</summary>
    private const int Rows = 96;

    /// <summary>Ways of laying what comes next that are looked at in all, at each step.</summary>
    private const int Effort = 6000;

    /// <param name="outlines">Each from its own lower left corner, counter-clockwise, no wider than the roll.</param>
    public static (ImmutableArray<PackedPiece> Pieces, double LengthMm) Of(
        IReadOnlyList<ImmutableArray<Vec2>> outlines,
        double rollMm,
        bool mayTurnOver
    ) => Of([.. outlines.Select(o => Ways(o, rollMm, mayTurnOver ? [false, true] : [false]))]);

    /// <param name="ways">For each piece all the ways that it may lie.</param>
    internal static (ImmutableArray<PackedPiece> Pieces, double LengthMm) Of(RollWay[][] ways)
    {
        int n = ways.Length;
        if (n == 0)
        {
            return ([], 0);
        }

        int beam = Math.Clamp(Effort / (n * n), 1, 60);
        List<State> states = [State.Bare];
        for (int step = 0; step < n; step++)
        {
            states =
            [
                .. states
                    .SelectMany(s => s.Further(ways))
                    .OrderBy(s => s.WasteMm2)
                    .ThenBy(s => s.LengthMm)
                    .DistinctBy(s => (Math.Round(s.WasteMm2), Math.Round(s.LengthMm, 1)))
                    .Take(beam),
            ];
        }

        (ImmutableArray<PackedPiece> pieces, double length) = Exact(states.MinBy(s => s.LengthMm)!);
        return RollTrial.Shorter(ways, length) is { } shorter ? Laid(shorter) : (pieces, length);
    }

    /// <summary>All the ways that a piece may lie, wherever else it is tried.</summary>
    /// <param name="over">With which faces up: as drawn (false), its mirror image (true), or both.</param>
    internal static RollWay[] Ways(
        ImmutableArray<Vec2> outline,
        double rollMm,
        IReadOnlyList<bool> over
    ) =>
        [
            .. over.SelectMany(o =>
                    new[] { false, true }.Select(turned => new RollShape(outline, turned, o))
                )
                .SelectMany(s => Heights(s, rollMm)),
        ];

    /// <summary>At one edge of the roll, at the other, and as many widths of its own up as there is room for.</summary>
    private static IEnumerable<RollWay> Heights(RollShape shape, double rollMm)
    {
        const int most = 8;
        double top = rollMm - shape.WidthMm;
        yield return new(shape, 0, rollMm, Rows);
        if (top < 1)
        {
            yield break;
        }

        yield return new(shape, top, rollMm, Rows);
        for (int i = 1; (i + 1) * shape.WidthMm <= rollMm && i < most; i++)
        {
            yield return new(shape, i * shape.WidthMm, rollMm, Rows);
        }
    }

    /// <summary>The pieces in the order that was found, each pushed on exactly.</summary>
    private static (ImmutableArray<PackedPiece>, double) Exact(State state)
    {
        List<LaidWay> laid = [];
        foreach ((int piece, RollWay way) in state.InOrder())
        {
            double x = 0;
            foreach (LaidWay before in laid)
            {
                if (before.Way.Pitch(way) is { } pitch)
                {
                    x = Math.Max(x, before.X + pitch);
                }
            }

            laid.Add(new(piece, way, x));
        }

        return Laid(laid);
    }

    private static (ImmutableArray<PackedPiece>, double) Laid(IReadOnlyList<LaidWay> laid) =>
        (
            [
                .. laid.Select(l => new PackedPiece(
                    l.Piece,
                    l.Way.Shape.Turned,
                    l.Way.Shape.Over,
                    new(l.X, l.Way.Y),
                    [.. l.Way.Shape.Outline.Select(p => p + new Vec2(l.X, l.Way.Y))]
                )),
            ],
            laid.Max(l => l.X + l.Way.Shape.LengthMm)
        );

    /// <summary>Some of the pieces laid, by how far the roll is taken up at each of its rows.</summary>
    private sealed class State
    {
        public static readonly State Bare = new(null, (-1, null), new double[Rows], 0);

        private readonly State? before;
        private readonly (int Piece, RollWay? Way) last;
        private readonly double[] taken;
        private readonly double areaMm2;

        private State(State? before, (int Piece, RollWay? Way) last, double[] taken, double areaMm2)
        {
            (this.before, this.last, this.taken, this.areaMm2) = (before, last, taken, areaMm2);
            double sum = 0;
            foreach (double row in taken)
            {
                LengthMm = Math.Max(LengthMm, row);
                sum += row;
            }

            TakenMm = sum;
        }

        public double LengthMm { get; }

        /// <summary>Behind the foremost that is taken up, and not covered.</summary>
        public double WasteMm2 => (TakenMm * RollMm / Rows) - areaMm2;

        private double TakenMm { get; }

        private double RollMm { get; init; }

        /// <summary>With one more of the pieces that are not laid, in each of its ways.</summary>
        public IEnumerable<State> Further(RollWay[][] ways)
        {
            for (int piece = 0; piece < ways.Length; piece++)
            {
                if (!Has(piece))
                {
                    foreach (RollWay way in ways[piece])
                    {
                        yield return With(piece, way);
                    }
                }
            }
        }

        public IEnumerable<(int Piece, RollWay Way)> InOrder() =>
            last.Way is { } way ? before!.InOrder().Append((last.Piece, way)) : [];

        private bool Has(int piece)
        {
            for (State? s = this; s is not null; s = s.before)
            {
                if (s.last.Piece == piece)
                {
                    return true;
                }
            }

            return false;
        }

        private State With(int piece, RollWay next)
        {
            double x = 0;
            for (int i = 0; i < next.Left.Length; i++)
            {
                x = Math.Max(x, taken[next.First + i] - next.Left[i]);
            }

            double[] more = [.. taken];
            for (int i = 0; i < next.Right.Length; i++)
            {
                more[next.First + i] = x + next.Right[i];
            }

            double area = areaMm2 + next.Shape.AreaMm2;
            return new(this, (piece, next), more, area) { RollMm = next.RollMm };
        }
    }
}
