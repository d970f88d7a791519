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

    /// <summary>What may be sawn already counts so much, in mm, of what waits to be surer: our own, no source.</summary>
    private const double SureEnough = 0.3;

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
        Estimate applied = taped?.Planked ?? Estimate.Around(TwoSides.Of(trust, cells));
        Plank[] planks = [.. planked.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))];
        var by = slopes.Planks.ToDictionary(p => p.Id);
        // Corner pieces, and planks that end at stem or transom, are no straight function of the table: they are fitted in place.
        Plank[] hung = [.. planks.Where(p => IsWhole(p) && SlopesOf(by, p.Id) is not null)];
        Plank[] open = [.. hung.Where(p => !p.IsFixed)];
        double Within(Matrix<double> s, SlopedPlank plank, Side side)
        {
            Vector<double> j = TapeCandidates.Sided(plank.Length, side);
            return TrustSpec.Within * Math.Sqrt((j * (s * j)) + plank.StockVariance);
        }

        // An end left long is enough where it keeps all planks of its layer and side from coming short, as cards and list have it.
        bool Enough(Plank p)
        {
            double within = Within(applied.Covariance, SlopesOf(by, p.Id)!, p.Side);
            return TrustFindings.LeftLongMm(p) is { } left
                ? within
                    / TrustSpec.Within
                    * TrustPlanner.NoneBeyond(
                        hung.Count(q => q.Layer == p.Layer && q.Side == p.Side)
                    )
                    <= left
                : within <= trust.SawWhenMm;
        }

        Matrix<double> wanted = Rows(by, open, cells.Count),
            counted = Matrix<double>.Build.DenseOfDiagonalVector(
                Vector<double>.Build.DenseOfEnumerable(
                    open.Length == 0 ? [1] : open.Select(p => Enough(p) ? SureEnough : 1)
                )
            );
        // The layer that is being laid: the face that others lie on is not there yet.
        int laying = open.Select(p => p.Layer).DefaultIfEmpty(1).Min();
        bool begun = planks.Any(p => p.Layer == laying && p.IsFitted);
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
                        id =>
                            id.Layer == laying
                            // On the bare hull marks are set out by the newest sheet; what was read before was between older ones.
                            && (begun ? planks.Any(p => p.Id == id && p.IsFitted) : taped is null)
                    )
                )
                .Where(c => !read.Contains(c.Place)),
        ];
        (ImmutableArray<TapeWish> wishes, Matrix<double> left) = Chosen(
            candidates,
            applied,
            open,
            (wanted, counted),
            most
        );
        TapeCandidate[] edges =
        [
            .. TapeCandidates.OfSeams(
                slopes,
                trust,
                true,
                id => open.Any(p => p.Id == id && p.Layer == laying && p.Kind != PlankKind.Corner)
            ),
        ];
        (ImmutableArray<TapeWish> then, _) = Chosen(
            edges,
            applied with
            {
                Covariance = left,
            },
            open,
            (wanted, counted),
            most
        );

        return new(
            wishes,
            // As planks go on, outward from the master.
            [
                .. then.OrderBy(w =>
                    Math.Abs(w.Place.Edge!.Value.Plank.Number - MasterOf(planked, laying))
                ),
            ],
            [
                .. hung.Select(p =>
                {
                    SlopedPlank of = SlopesOf(by, p.Id)!;
                    return new PlankSureness(
                        p.Id,
                        Within(applied.Covariance, of, p.Side),
                        Within(left, of, p.Side),
                        TrustFindings.LeftLongMm(p),
                        p.IsFixed,
                        Enough(p)
                    );
                }),
            ],
            [.. planks.Except(hung).Where(p => !p.IsFixed).Select(p => p.Id)]
        )
        {
            Again = [.. Again(taped)],
            Limits = Limits(trust, slopes, applied.Covariance),
            Verdicts = FitJudge.Of(planked, trust, slopes, applied.Covariance),
        };
    }

    /// <summary>Places whose reading was put aside, and then those that were read but once; what all else has there.</summary>
    private static IEnumerable<TapeWish> Again(TapedHull? taped) =>
        from row in taped?.Rows ?? []
        group row by row.Reading.Place into place
        where place.Any(r => !r.IsKept) || place.Count() == 1
        let worst = place.MaxBy(r => Math.Abs(r.Held.W))
        orderby place.Any(r => !r.IsKept) descending
        select new TapeWish(
            place.Key,
            worst.Reading.Mm - worst.Held.Slip,
            TrustSpec.Within * worst.Held.SlipSigma,
            null
        )
        {
            IsSlip = place.Any(r => !r.IsKept),
        };

    /// <summary>From keel to chine.</summary>
    private static bool IsWhole(Plank plank) =>
        plank.Kind != PlankKind.Corner
        && plank.Ends.All(e => e.At is Hulls.PanelEdge.Lower or Hulls.PanelEdge.Upper);

    private static int MasterOf(Planked planked, int layer) =>
        planked.PlankLayers.First(l => l.Number == layer).MasterNumber;

    private static ImmutableDictionary<PlankId, CheckLimits> Limits(
        TrustSpec trust,
        PlankSlopes slopes,
        Matrix<double> s
    )
    {
        double tape = TapeSigmas.Of(trust, TapeKind.SeamLength);
        double? Of(SlopedSeam? seam, Side side)
        {
            if (seam is null)
            {
                return null;
            }

            Vector<double> h = TapeCandidates.Sided(seam.Held, side);
            return TrustSpec.Within * Math.Sqrt((h * (s * h)) + (tape * tape));
        }

        return slopes
            .Planks.SelectMany(p =>
                new[] { Side.Starboard, Side.Port }.Select(side =>
                    KeyValuePair.Create(
                        p.Id with
                        {
                            Side = side,
                        },
                        new CheckLimits(
                            Of(p.ForwardSeam, side),
                            Of(p.AfterSeam, side),
                            Of(p.Diagonal, side)
                        )
                    )
                )
            )
            .ToImmutableDictionary();
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

    private static (ImmutableArray<TapeWish> Wishes, Matrix<double> Left) Chosen(
        TapeCandidate[] candidates,
        Estimate known,
        Plank[] open,
        (Matrix<double> Slopes, Matrix<double> Counted) planks,
        int most
    )
    {
        (Matrix<double> wanted, Matrix<double> s) = (planks.Slopes, known.Covariance);
        if (candidates.Length == 0 || open.Length == 0)
        {
            return ([], s);
        }

        Matrix<double> h = Matrix<double>.Build.DenseOfRowVectors(candidates.Select(c => c.Slopes));
        var choice = ReadingChoice.Of(
            s,
            planks.Counted * wanted,
            h,
            Vector<double>.Build.DenseOfEnumerable(candidates.Select(c => c.SigmaMm * c.SigmaMm)),
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
                    Brought(open, planks, s, next)
                )
                {
                    Marks = of.Marks,
                }
            );
            s = next;
        }

        return (wishes.ToImmutable(), s);
    }

    private static BroughtTo? Brought(
        Plank[] open,
        (Matrix<double> Slopes, Matrix<double> Counted) planks,
        Matrix<double> before,
        Matrix<double> after
    )
    {
        double[] from = [.. Within(planks.Slopes, before)],
            to = [.. Within(planks.Slopes, after)];
        int best = Enumerable
            .Range(0, open.Length)
            .MaxBy(i => planks.Counted[i, i] * (from[i] - to[i]));
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
            .Select(i => TrustSpec.Within * Math.Sqrt(Math.Max(0, js.Row(i) * wanted.Row(i))));
    }
}
