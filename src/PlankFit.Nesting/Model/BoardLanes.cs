using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Every way to rip a board into lanes, by dynamic programming across its width: the best for given values of strips.</summary>
internal sealed class BoardLanes
{
    /// <summary>Lanes begin at steps of this, mm; as much may be lost beside each.</summary>
    private const double StepMm = 0.25;
    private const double Fudge = 1e-6;

    private readonly ImmutableArray<LaneClass> classes;
    private readonly double kerfMm;
    private readonly int cells;
    private readonly int[] wide;
    private readonly int[] narrow;
    private readonly ImmutableArray<ClearStretch>[][] stretches;

    public BoardLanes(
        BoardType board,
        ImmutableArray<LaneClass> classes,
        double kerfMm,
        double proudMm
    )
    {
        Board = board;
        this.classes = classes;
        this.kerfMm = kerfMm;
        double room = board.Region.WidthMm + proudMm + kerfMm;
        cells = Math.Max(0, (int)Math.Floor((room / StepMm) + Fudge));
        wide =
        [
            .. classes.Select(c => (int)Math.Ceiling(((c.HeightMm + kerfMm) / StepMm) - Fudge)),
        ];
        // Exactly as wide as the board is wide enough, whatever the steps.
        for (int c = 0; c < wide.Length; c++)
        {
            if (wide[c] > cells && classes[c].HeightMm + kerfMm <= room + Fudge)
            {
                wide[c] = cells;
            }
        }

        narrow =
        [
            .. classes.Select(c => Math.Max(1, (int)Math.Floor((c.LeastMm + kerfMm) / StepMm))),
        ];
        stretches = [.. classes.Select((c, i) => Stretches(c, wide[i]))];
    }

    public BoardType Board { get; }

    /// <summary>All lengths that stretches of a class's lanes have in this board.</summary>
    public IEnumerable<double> StretchLengths(int laneClass) =>
        stretches[laneClass].SelectMany(s => s).Select(s => s.LengthMm).Distinct();

    /// <summary>The dearest way to rip it.</summary>
    /// <param name="value">Of a strip of a class, by its length; never less for a longer one.</param>
    public Ripping Best(Func<int, double, double> value)
    {
        var (best, took) = Filled(wide, value);
        var lanes = ImmutableArray.CreateBuilder<RippedLane>();
        for (int y = cells; y > 0; )
        {
            int c = took[y];
            if (c < 0)
            {
                y--;
                continue;
            }

            y -= wide[c];
            lanes.Add(
                new(
                    c,
                    Board.Region.LeastV + (y * StepMm),
                    classes[c].HeightMm,
                    stretches[c][Board.Region.IsUneven ? y : 0]
                )
            );
        }

        lanes.Reverse();
        return new(best, lanes.ToImmutable());
    }

    /// <summary>No way to rip it is dearer, whatever the widths of its lanes: every lane is taken as narrow as anything in it allows.</summary>
    public double AtMost(Func<int, double, double> value) => Filled(narrow, value).Best;

    private (double Best, int[] Took) Filled(int[] widths, Func<int, double, double> value)
    {
        var best = new double[cells + 1];
        var took = new int[cells + 1];
        Array.Fill(took, -1);
        double[] even =
        [
            .. stretches.Select(
                (at, c) => at.Length > 0 ? at[0].Sum(s => value(c, s.LengthMm)) : 0
            ),
        ];
        bool uneven = Board.Region.IsUneven;
        for (int y = 1; y <= cells; y++)
        {
            best[y] = best[y - 1];
            for (int c = 0; c < widths.Length; c++)
            {
                int from = y - widths[c];
                if (from < 0 || stretches[c].Length == 0)
                {
                    continue;
                }

                // A narrower lane than was looked at here is clear wherever the whole one is, and perhaps further: the best of all places is no less.
                double here =
                    best[from]
                    + (
                        !uneven ? even[c]
                        : ReferenceEquals(widths, wide)
                            ? stretches[c][from].Sum(s => value(c, s.LengthMm))
                        : value(c, Board.Region.LengthMm)
                    );
                if (here > best[y])
                {
                    (best[y], took[y]) = (here, c);
                }
            }
        }

        return (best[cells], took);
    }

    /// <summary>By place across the board, the clear stretches of a lane there; one place is enough where all are alike, none where the board is too narrow.</summary>
    private ImmutableArray<ClearStretch>[] Stretches(LaneClass lane, int width)
    {
        int places =
            width > cells ? 0
            : Board.Region.IsUneven ? cells - width + 1
            : 1;
        return
        [
            .. Enumerable
                .Range(0, places)
                .Select(y =>
                {
                    double low = Board.Region.LeastV + (y * StepMm);
                    return Board.Region.Clear(low, low + lane.HeightMm, kerfMm);
                }),
        ];
    }
}

/// <summary>A board ripped into lanes, and what they are worth.</summary>
internal sealed record Ripping(double Value, ImmutableArray<RippedLane> Lanes);

/// <param name="LowV">Where it begins across the board, mm.</param>
/// <param name="WidthMm">What is ripped.</param>
internal sealed record RippedLane(
    int Class,
    double LowV,
    double WidthMm,
    ImmutableArray<ClearStretch> Stretches
);
