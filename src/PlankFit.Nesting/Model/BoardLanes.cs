using System.Collections.Immutable;

namespace PlankFit.Nesting.Model;

/// <summary>Every way to rip a board into lanes, by dynamic programming across its width: the best for given values of strips.</summary>
internal sealed class BoardLanes
{
    /// <summary>Lanes begin at steps of this, mm; as much may be lost beside each.</summary>
    private const double StepMm = 0.25;
    private const double Fudge = 1e-6;

    private readonly ImmutableArray<LaneClass> classes;
    private readonly int cells;
    private readonly double kerfMm;
    private readonly double proudMm;

    /// <summary>By class, as wide as it is.</summary>
    private readonly ImmutableArray<LaneWay> wide;

    /// <summary>By class and band, as narrow as anything in it allows, and clear wherever it could be.</summary>
    private readonly ImmutableArray<LaneWay> narrow;

    public BoardLanes(
        BoardType board,
        ImmutableArray<LaneClass> classes,
        double kerfMm,
        double proudMm
    )
    {
        Board = board;
        (this.classes, this.kerfMm, this.proudMm) = (classes, kerfMm, proudMm);
        double room = board.Region.WidthMm + proudMm + kerfMm;
        cells = Cells(board.Region.WidthMm);
        wide =
        [
            .. classes.Select(
                (c, i) =>
                {
                    int steps = (int)Math.Ceiling(((c.HeightMm + kerfMm) / StepMm) - Fudge);
                    // Exactly as wide as the board is wide enough, whatever the steps.
                    return Way(
                        i,
                        0,
                        steps > cells && c.HeightMm + kerfMm <= room + Fudge ? cells : steps,
                        0,
                        c.HeightMm,
                        kerfMm
                    );
                }
            ),
        ];
        // A lane that begins anywhere within a step surely takes what lies between the step's end and its own least width.
        narrow =
        [
            .. classes.SelectMany(
                (c, i) =>
                    // A board may take things of a class though it is not as wide as all of it.
                    c.Bands.Select(
                        (band, b) =>
                            Way(
                                i,
                                b,
                                Math.Max(1, (int)Math.Floor((band.LeastMm + kerfMm) / StepMm)),
                                StepMm,
                                Math.Max(StepMm, band.LeastMm),
                                kerfMm
                            )
                    )
            ),
        ];
    }

    public BoardType Board { get; }

    /// <summary>All lengths that stretches of a class's lanes have in this board.</summary>
    public IEnumerable<double> StretchLengths(int laneClass) =>
        wide[laneClass].Clear.SelectMany(s => s).Select(s => s.LengthMm).Distinct();

    /// <summary>The dearest way to rip it.</summary>
    /// <param name="value">Of a strip of a class, by its length; never less for a longer one.</param>
    public Ripping Best(Func<int, double, double> value)
    {
        (double best, int[]? took, double[] _) = Filled(wide, (c, _, length) => value(c, length));
        ImmutableArray<RippedLane>.Builder lanes = ImmutableArray.CreateBuilder<RippedLane>();
        for (int y = cells; y > 0; )
        {
            int c = took[y];
            if (c < 0)
            {
                y--;
                continue;
            }

            y -= wide[c].Steps;
            lanes.Add(
                new(
                    c,
                    Board.Region.LeastV + (y * StepMm),
                    classes[c].HeightMm,
                    wide[c].Clear[wide[c].ClearAt(y)]
                )
            );
        }

        lanes.Reverse();
        return new(best, lanes.ToImmutable());
    }

    /// <summary>No way to rip it is dearer, whatever the widths of its lanes: every lane is taken as narrow as anything in it allows.</summary>
    /// <param name="value">Of a strip of a class and a band of it, by its length.</param>
    public double AtMost(Func<int, int, double, double> value) => Filled(narrow, value).Best;

    /// <summary>The same of boards no wider than this, which has no faults.</summary>
    /// <param name="widthsMm">Of their regions.</param>
    public double[] AtMost(Func<int, int, double, double> value, IEnumerable<double> widthsMm)
    {
        double[] best = Filled(narrow, value).All;
        return [.. widthsMm.Select(w => best[Math.Min(cells, Cells(w))])];
    }

    /// <summary>Steps in so much width of a board, what it may be proud and a kerf with it.</summary>
    private int Cells(double widthMm) =>
        Math.Max(0, (int)Math.Floor(((widthMm + proudMm + kerfMm) / StepMm) + Fudge));

    private (double Best, int[] Took, double[] All) Filled(
        ImmutableArray<LaneWay> ways,
        Func<int, int, double, double> value
    )
    {
        double[] best = new double[cells + 1];
        int[] took = new int[cells + 1];
        Array.Fill(took, -1);
        double[][] worth =
        [
            .. ways.Select(w =>
                w.Clear.Select(stretches => stretches.Sum(s => value(w.Class, w.Band, s.LengthMm)))
                    .ToArray()
            ),
        ];
        for (int y = 1; y <= cells; y++)
        {
            best[y] = best[y - 1];
            for (int w = 0; w < worth.Length; w++)
            {
                int from = y - ways[w].Steps;
                if (from < 0 || worth[w].Length == 0)
                {
                    continue;
                }

                double here = best[from] + worth[w][ways[w].ClearAt(from)];
                if (here > best[y])
                {
                    (best[y], took[y]) = (here, w);
                }
            }
        }

        return (best[cells], took, best);
    }

    /// <summary>What of a lane is clear, by the step at which it begins; one place stands for all where all are alike, none where the board is too narrow.</summary>
    private LaneWay Way(
        int laneClass,
        int band,
        int steps,
        double fromMm,
        double toMm,
        double kerfMm
    )
    {
        int places =
            steps > cells ? 0
            : Board.Region.IsUneven ? cells - steps + 1
            : 1;
        var kinds = new List<ImmutableArray<ClearStretch>>();
        int[] at = new int[places];
        for (int y = 0; y < places; y++)
        {
            double low = Board.Region.LeastV + (y * StepMm);
            ImmutableArray<ClearStretch> clear = Board.Region.Clear(
                low + fromMm,
                low + toMm,
                kerfMm
            );
            // Places next to each other are mostly alike.
            at[y] = kinds.FindLastIndex(k => k.AsSpan().SequenceEqual(clear.AsSpan()));
            if (at[y] < 0)
            {
                at[y] = kinds.Count;
                kinds.Add(clear);
            }
        }

        return new(laneClass, band, steps, [.. kinds], places > 1 ? at : null);
    }

    /// <summary>Lanes of one class, so many steps wide with their kerf.</summary>
    /// <param name="Clear">The stretches without faults that such lanes have; which of them, by the step of its beginning, is in <paramref name="At"/>.</param>
    private sealed record LaneWay(
        int Class,
        int Band,
        int Steps,
        ImmutableArray<ImmutableArray<ClearStretch>> Clear,
        int[]? At
    )
    {
        public int ClearAt(int step) => At is null ? 0 : At[step];
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
