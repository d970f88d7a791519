using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Adjusting;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>Which readings make the planks that are not sawn yet surest, and which of these may be sawn now.</summary>
public static class TapeAdvisor
{
    /// <summary>A reading that takes less than this part of what is left of the variances is not worth its walk: our own bound, no source.</summary>
    private const double Worth = 0.02;

    /// <summary>Of what the reading brings to the plank that it helps most: planks beside it that get so much of it are named with it.</summary>
    private const double Alongside = 0.5;

    /// <summary>Planks as laid, what is known of the table's errors (both sides), and how planks hang on them.</summary>
    /// <param name="taped">Null where nothing was read.</param>
    /// <param name="most">How many readings are wished for at most.</param>
    public static TapeAdvice Of(
        Planked planked,
        TrustSpec trust,
        PlankSlopes slopes,
        TapedHull? taped,
        int most
    )
    {
        PlankingJob job = planked.Job with { AsBuilt = AsBuiltSpec.None };
        var cells = TableCells.Of(job);
        Estimate known = taped?.After ?? Estimate.Around(TwoSides.Of(trust, cells));
        Estimate applied = taped is { Tables: null }
            ? Estimate.Around(TwoSides.Of(trust, cells))
            : known;
        Plank[] planks = [.. planked.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))];
        Dictionary<PlankId, SlopedPlank> by = slopes.Planks.ToDictionary(p => p.Id);
        Plank[] hung = [.. planks.Where(p => SlopesOf(by, p.Id) is not null)];
        Plank[] open = [.. hung.Where(p => !p.IsFixed)];
        Matrix<double> wanted = Rows(by, open, cells.Count);
        bool begun = planks.Any(p => p.IsFitted);
        HashSet<TapePlace> read = [.. taped?.Rows.Select(r => r.Reading.Place) ?? []];
        TapeCandidate[] candidates =
        [
            .. TapeCandidates
                .OfFrames(job, cells, trust)
                .Concat(
                    TapeCandidates.OfSeams(
                        slopes,
                        trust,
                        begun,
                        id => !begun || planks.Any(p => p.Id == id && p.IsFitted)
                    )
                )
                .Where(c => !read.Contains(c.Place)),
        ];
        (ImmutableArray<TapeWish> wishes, Matrix<double> left) = Chosen(
            candidates,
            applied,
            open,
            wanted,
            most
        );
        TapeCandidate[] edges =
        [
            .. TapeCandidates.OfSeams(
                slopes,
                trust,
                true,
                id => open.Any(p => p.Id == id && p.Kind != PlankKind.Corner)
            ),
        ];
        (ImmutableArray<TapeWish> then, _) = Chosen(
            edges,
            applied with
            {
                Covariance = left,
            },
            open,
            wanted,
            most
        );
        double Within(Matrix<double> s, SlopedPlank plank, Side side)
        {
            Vector<double> j = TapeCandidates.Sided(plank.Length, side);
            return TrustSpec.Within * Math.Sqrt((j * (s * j)) + plank.StockVariance);
        }

        return new(
            wishes,
            then,
            [
                .. hung.Select(p =>
                {
                    SlopedPlank of = SlopesOf(by, p.Id)!;
                    double now = Within(applied.Covariance, of, p.Side);
                    double? leftLong = LeftLong(p);
                    return new PlankSureness(
                        p.Id,
                        now,
                        Within(left, of, p.Side),
                        leftLong,
                        p.IsFixed,
                        now <= (leftLong ?? trust.SawWhenMm)
                    );
                }),
            ],
            [.. planks.Where(p => SlopesOf(by, p.Id) is null && !p.IsFixed).Select(p => p.Id)]
        );
    }

    private static SlopedPlank? SlopesOf(Dictionary<PlankId, SlopedPlank> by, PlankId id) =>
        by.GetValueOrDefault(id with { Side = Side.Starboard });

    private static Matrix<double> Rows(
        Dictionary<PlankId, SlopedPlank> by,
        Plank[] planks,
        int cells
    ) =>
        planks.Length == 0
            ? Matrix<double>.Build.Dense(1, 2 * cells)
            : Matrix<double>.Build.DenseOfRowVectors(
                planks.Select(p => TapeCandidates.Sided(SlopesOf(by, p.Id)!.Length, p.Side))
            );

    /// <summary>The least by which an end is left long, less nothing; null where both are fitted.</summary>
    private static double? LeftLong(Plank plank) =>
        plank.Ends.Any(e => e.OverhangMm is not null)
            ? plank.Ends.Max(e => e.OverhangMm ?? 0)
            : null;

    private static (ImmutableArray<TapeWish> Wishes, Matrix<double> Left) Chosen(
        TapeCandidate[] candidates,
        Estimate known,
        Plank[] open,
        Matrix<double> wanted,
        int most
    )
    {
        Matrix<double> s = known.Covariance;
        if (candidates.Length == 0 || open.Length == 0)
        {
            return ([], s);
        }

        Matrix<double> h = Matrix<double>.Build.DenseOfRowVectors(
            candidates.Select(c => c.Slopes)
        );
        var choice = ReadingChoice.Of(
            s,
            wanted,
            h,
            Vector<double>.Build.DenseOfEnumerable(
                candidates.Select(c => c.SigmaMm * c.SigmaMm)
            ),
            most
        );
        ImmutableArray<TapeWish>.Builder wishes = ImmutableArray.CreateBuilder<TapeWish>();
        double sum = choice.SumBefore;
        foreach (ChosenReading chosen in choice.Chosen)
        {
            if (sum - chosen.SumAfter < Worth * sum)
            {
                break;
            }

            sum = chosen.SumAfter;
            TapeCandidate of = candidates[chosen.Reading];
            Vector<double> spread = s * of.Slopes;
            double q = (of.Slopes * spread) + (of.SigmaMm * of.SigmaMm),
                drawn = of.Slopes * (known.Covariance * of.Slopes) + (of.SigmaMm * of.SigmaMm);
            Matrix<double> next = s - (spread.OuterProduct(spread) / q);
            wishes.Add(
                new(
                    of.Place,
                    of.DrawnMm + (of.Slopes * known.Values),
                    TrustSpec.Within * Math.Sqrt(drawn),
                    Brought(open, wanted, s, next)
                )
            );
            s = next;
        }

        return (wishes.ToImmutable(), s);
    }

    private static BroughtTo? Brought(
        Plank[] open,
        Matrix<double> wanted,
        Matrix<double> before,
        Matrix<double> after
    )
    {
        double[] from = [.. Within(wanted, before)],
            to = [.. Within(wanted, after)];
        int best = Enumerable.Range(0, open.Length).MaxBy(i => from[i] - to[i]);
        double most = from[best] - to[best];
        bool Goes(int i, int with) =>
            i >= 0
            && i < open.Length
            && open[i].Side == open[with].Side
            && open[i].Layer == open[with].Layer
            && Math.Abs(open[i].Number - open[with].Number) == 1
            && from[i] - to[i] >= Alongside * most;
        int first = best,
            last = best;
        while (Goes(first - 1, first))
        {
            first--;
        }

        while (Goes(last + 1, last))
        {
            last++;
        }

        return most < LeastToldMm
            ? null
            : new(
                open[first].Id,
                open[last].Id,
                from[first..(last + 1)].Max(),
                to[first..(last + 1)].Max()
            );
    }

    /// <summary>Half of what paper shows.</summary>
    private const double LeastToldMm = 0.25;

    private static IEnumerable<double> Within(Matrix<double> wanted, Matrix<double> s)
    {
        Matrix<double> js = wanted * s;
        return Enumerable
            .Range(0, wanted.RowCount)
            .Select(i =>
                TrustSpec.Within * Math.Sqrt(Math.Max(0, js.Row(i) * wanted.Row(i)))
            );
    }
}
