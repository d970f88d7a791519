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
    )
    {
        int n = outlines.Count;
        if (n == 0)
        {
            return ([], 0);
        }

        RollWay[][] ways =
        [
            .. outlines.Select(
                (o, i) =>
                    (RollWay[])[.. Ways(i, o, mayTurnOver).SelectMany(s => Heights(s, rollMm))]
            ),
        ];
        int beam = Math.Clamp(Effort / (n * n), 1, 60);
        List<State> states = [new(null, null, new double[Rows], 0)];
        for (int step = 0; step < n; step++)
        {
            states =
            [
                .. states
                    .SelectMany(s =>
                        ways.Where((_, i) => !s.Has(i))
                            .SelectMany(w => w)
                            .Select(w => s.With(w, rollMm))
                    )
                    .OrderBy(s => s.WasteMm2)
                    .ThenBy(s => s.LengthMm)
                    .DistinctBy(s => (Math.Round(s.WasteMm2), Math.Round(s.LengthMm, 1)))
                    .Take(beam),
            ];
        }

        (ImmutableArray<PackedPiece> pieces, double length) = Exact(states.MinBy(s => s.LengthMm)!);
        return
            RollTrial.Shorter(
                [.. ways.Select(w => w.Select(v => (v.Shape, v.Y)).ToArray())],
                length
            )
                is { } shorter
            ? Laid(shorter)
            : (pieces, length);
    }

    private static IEnumerable<RollShape> Ways(
        int piece,
        ImmutableArray<Vec2> outline,
        bool mayTurnOver
    ) =>
        new[] { (false, false), (true, false), (false, true), (true, true) }
            .Where(w => mayTurnOver || !w.Item2)
            .Select(w => new RollShape(piece, outline, w.Item1, w.Item2));

    /// <summary>At one edge of the roll, at the other, and as many widths of its own up as there is room for.</summary>
    private static IEnumerable<RollWay> Heights(RollShape shape, double rollMm)
    {
        const int most = 8;
        double top = rollMm - shape.WidthMm;
        yield return new(shape, 0, rollMm);
        if (top < 1)
        {
            yield break;
        }

        yield return new(shape, top, rollMm);
        for (int i = 1; (i + 1) * shape.WidthMm <= rollMm && i < most; i++)
        {
            yield return new(shape, i * shape.WidthMm, rollMm);
        }
    }

    /// <summary>The pieces in the order that was found, each pushed on exactly.</summary>
    private static (ImmutableArray<PackedPiece>, double) Exact(State state)
    {
        List<(RollShape Shape, double X, double Y)> laid = [];
        foreach (RollWay way in state.InOrder())
        {
            double x = 0;
            foreach ((RollShape before, double bx, double by) in laid)
            {
                if (before.Pitch(by, way.Shape, way.Y) is { } pitch)
                {
                    x = Math.Max(x, bx + pitch);
                }
            }

            laid.Add((way.Shape, x, way.Y));
        }

        return Laid(laid);
    }

    private static (ImmutableArray<PackedPiece>, double) Laid(
        IReadOnlyList<(RollShape Shape, double X, double Y)> laid
    ) =>
        (
            [
                .. laid.Select(l => new PackedPiece(
                    l.Shape.Piece,
                    l.Shape.Turned,
                    l.Shape.Over,
                    new(l.X, l.Y),
                    [.. l.Shape.Outline.Select(p => p + new Vec2(l.X, l.Y))]
                )),
            ],
            laid.Max(l => l.X + l.Shape.LengthMm)
        );

    /// <summary>A shape at a height of the roll, with what it takes of each of the search's rows at most.</summary>
    private sealed class RollWay
    {
        public RollWay(RollShape shape, double y, double rollMm)
        {
            (Shape, Y) = (shape, y);
            double row = rollMm / Rows;
            First = Math.Clamp((int)(y / row), 0, Rows - 1);
            int last = Math.Clamp(
                (int)Math.Ceiling((y + shape.WidthMm) / row) - 1,
                First,
                Rows - 1
            );
            Left = new double[last - First + 1];
            Right = new double[Left.Length];
            for (int i = 0; i < Left.Length; i++)
            {
                double low = Math.Clamp(((First + i) * row) - y, 0, shape.WidthMm),
                    high = Math.Clamp(((First + i + 1) * row) - y, 0, shape.WidthMm);
                Left[i] = shape.LeftBetween(low, high);
                Right[i] = shape.RightBetween(low, high);
            }

            AreaMm2 = shape.AreaMm2;
        }

        public RollShape Shape { get; }
        public double Y { get; }
        public int First { get; }
        public double[] Left { get; }
        public double[] Right { get; }
        public double AreaMm2 { get; }
    }

    /// <summary>Some of the pieces laid, by how far the roll is taken up at each of its rows.</summary>
    private sealed class State
    {
        private readonly State? before;
        private readonly RollWay? way;
        private readonly double[] taken;
        private readonly double areaMm2;

        public State(State? before, RollWay? way, double[] taken, double areaMm2)
        {
            (this.before, this.way, this.taken, this.areaMm2) = (before, way, taken, areaMm2);
            LengthMm = taken.Max();
        }

        public double LengthMm { get; }

        /// <summary>Behind the foremost that is taken up, and not covered.</summary>
        public double WasteMm2 { get; private init; }

        public bool Has(int piece)
        {
            for (State? s = this; s is not null; s = s.before)
            {
                if (s.way?.Shape.Piece == piece)
                {
                    return true;
                }
            }

            return false;
        }

        public IEnumerable<RollWay> InOrder() => way is null ? [] : before!.InOrder().Append(way);

        public State With(RollWay next, double rollMm)
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

            double area = areaMm2 + next.AreaMm2;
            return new(this, next, more, area) { WasteMm2 = (more.Sum() * rollMm / Rows) - area };
        }
    }
}
