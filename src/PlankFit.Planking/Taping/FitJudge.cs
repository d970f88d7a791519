using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>
/// From a plank that does not fit back to the cause: each cause by itself foretells the misfit d as N(0, R + A S A'), A its effect and S what is known of its size, and is the
/// likelier the better it does (Bayes; all causes alike before). Its size is then S A' (R + A S A')⁻¹ d.
/// </summary>
public static class FitJudge
{
    /// <summary>How near a plank is laid to its marks, one standard deviation, degrees: our own, no source.</summary>
    private const double LaidDegrees = 0.05;

    /// <summary>The same of its sawn length, and of its sawn end over its width, mm.</summary>
    private const double SawnMm = 0.5;

    /// <summary>A feeler in the gap at a corner, mm.</summary>
    private const double FeelerMm = 0.3;

    private const int MostNamed = 3;

    /// <summary>A verdict for every plank that was offered up and hangs on the table by slopes.</summary>
    /// <param name="known">Covariance of the errors of both sides' cells.</param>
    public static ImmutableArray<FitVerdict> Of(
        Planked planked,
        TrustSpec trust,
        PlankSlopes slopes,
        Matrix<double> known
    )
    {
        PlankingJob job = planked.Job with { AsBuilt = AsBuiltSpec.None };
        var cells = TableCells.Of(job);
        TapeReading[] offered =
        [
            .. planked.Job.AsBuilt.Readings.Where(r => r.Place.IsOfAPlankOfferedUp),
        ];
        var frames = new Lazy<ImmutableArray<TapeCandidate>>(() =>
            TapeCandidates.OfFrames(job, cells, trust)
        );
        return
        [
            .. offered
                .GroupBy(r => r.Place.Edge!.Value.Plank)
                .OrderBy(g => g.Key)
                .Select(g =>
                    slopes.Planks.FirstOrDefault(p => p.Id == g.Key with { Side = Side.Starboard })
                        is { Fit: not null } plank
                        ? Of(plank, g.Key, [.. g], new(job, cells, trust, known), frames)
                        : null
                )
                .OfType<FitVerdict>(),
        ];
    }

    private sealed record Ground(
        PlankingJob Job,
        TableCells Cells,
        TrustSpec Trust,
        Matrix<double> Known
    );

    /// <param name="Effect">On shortness and opening forward, a row each, for a mm (or a degree) of each part of the cause.</param>
    private sealed record Cause(
        FitCauseKind Kind,
        string? Station,
        Matrix<double> Effect,
        Matrix<double> Covariance,
        int[] Of
    );

    private static FitVerdict Of(
        SlopedPlank plank,
        PlankId id,
        TapeReading[] read,
        Ground ground,
        Lazy<ImmutableArray<TapeCandidate>> frames
    )
    {
        double[] shorts =
        [
            .. read.Where(r => r.Place.Kind == TapeKind.ShortAtChine).Select(r => r.Mm),
        ];
        double[] opens =
        [
            .. read.Where(r => r.Place.Kind == TapeKind.OpensAtKeel)
                .Select(r => r.Place.Edge!.Value.After ? -r.Mm : r.Mm),
        ];
        double? lacks = shorts.Length == 0 ? null : shorts.Average(),
            forward = opens.Length == 0 ? null : opens.Average();
        int[] seen =
        [
            .. new[] { lacks, forward }.Select((v, i) => v is null ? -1 : i).Where(i => i >= 0),
        ];
        // Pushed home it touches at one corner of the keel: its own line stands off there by half of what the other opens, along the plank.
        double standsOff =
            Math.Abs(forward ?? 0)
            / 2
            / Math.Abs(Math.Sin(plank.Fit!.InboardDegrees * Math.PI / 180));
        Vector<double> d = Vector<double>.Build.DenseOfEnumerable(
            seen.Select(i => (i == 0 ? lacks + standsOff : forward)!.Value)
        );
        double tape = TrustSpec.Sigma(ground.Trust.TapeWithinMm);
        Matrix<double> own = Matrix<double>.Build.DenseOfDiagonalArray([
            .. seen.Select(i =>
                i == 0 ? tape * tape / shorts.Length : FeelerMm * FeelerMm / opens.Length
            ),
        ]);
        (Cause Cause, double Log, Vector<double> Size)[] judged =
        [
            .. Causes(plank, id.Side, ground)
                .Select(c =>
                {
                    Matrix<double> a = Matrix<double>.Build.DenseOfRowVectors(
                            seen.Select(i => c.Effect.Row(i))
                        ),
                        spread = own + (a * c.Covariance * a.Transpose()),
                        inverse = spread.Inverse();
                    return (
                        c,
                        -0.5 * (Math.Log(spread.Determinant()) + (d * (inverse * d))),
                        c.Covariance * (a.Transpose() * (inverse * d))
                    );
                })
                .OrderByDescending(j => j.Item2),
        ];
        double best = judged[0].Log,
            sum = judged.Sum(j => Math.Exp(j.Log - best));
        ImmutableArray<LikelyCause> likeliest =
        [
            .. judged
                .Take(MostNamed)
                .Select(j =>
                    Named(plank.Fit!, j.Cause, j.Size, Math.Exp(j.Log - best) / sum, ground)
                ),
        ];
        return new(
            id,
            lacks,
            forward,
            likeliest,
            Parting(
                plank.Fit!,
                ground,
                (judged[0].Cause, judged[0].Size),
                (judged[1].Cause, judged[1].Size),
                [.. frames.Value.Where(f => f.Place.Side is null || f.Place.Side == id.Side)]
            )
        )
        {
            IsNoMoreThanTools = seen.Select((_, i) => i)
                .All(i =>
                    Math.Abs(d[i]) <= TrustSpec.Within * Math.Sqrt(own[i, i] + (SawnMm * SawnMm))
                ),
        };
    }

    private static IEnumerable<Cause> Causes(SlopedPlank plank, Side side, Ground ground)
    {
        SlopedFit fit = plank.Fit!;
        Matrix<double> One(double sigma) => Matrix<double>.Build.Dense(1, 1, sigma * sigma);
        Matrix<double> Effect(double lacks, double opens) =>
            Matrix<double>.Build.DenseOfArray(
                new[,]
                {
                    { lacks },
                    { opens },
                }
            );
        yield return new(
            FitCauseKind.LaidTurned,
            null,
            Effect(fit.ShortADegree, -fit.OpensForwardADegree),
            One(LaidDegrees),
            []
        );
        yield return new(FitCauseKind.Sawn, null, Effect(1, 0), One(SawnMm), []);
        yield return new(FitCauseKind.EndSawn, null, Effect(0, 1), One(SawnMm), []);
        TableCells cells = ground.Cells;
        int first = side == Side.Starboard ? 0 : cells.Count;
        Cause OfCells(FitCauseKind kind, string? station, int[] of) =>
            new(
                kind,
                station,
                Matrix<double>.Build.Dense(
                    2,
                    of.Length,
                    (i, k) =>
                        i == 0
                            ? plank.Length[of[k]]
                            : fit.OpensForwardADegree * fit.InboardSlopes[of[k]]
                ),
                Matrix<double>.Build.Dense(
                    of.Length,
                    of.Length,
                    (i, k) => ground.Known[first + of[i], first + of[k]]
                ),
                of
            );
        int[] Where(Func<TableCell, bool> which) =>
            [.. Enumerable.Range(0, cells.Count).Where(i => which(cells.Cells[i]))];
        foreach (int station in cells.Cells.Select(c => c.Station).Distinct().Order())
        {
            string name = ground.Job.Offsets.Stations[station].Name;
            foreach (
                (FitCauseKind kind, int[] of) in new[]
                {
                    (
                        FitCauseKind.KeelAt,
                        Where(c => c.Station == station && c.OfKeel && c.Kind != CellKind.Position)
                    ),
                    (
                        FitCauseKind.ChineAt,
                        Where(c => c.Station == station && !c.OfKeel && c.Kind != CellKind.Position)
                    ),
                    (
                        FitCauseKind.StationAlong,
                        Where(c => c.Station == station && c.Kind == CellKind.Position)
                    ),
                }
            )
            {
                if (of.Length > 0)
                {
                    yield return OfCells(kind, name, of);
                }
            }
        }

        int[] keel = Where(c => c.OfKeel && c.Kind == CellKind.HalfBreadth);
        if (keel.Length > 0)
        {
            // Of what was said of it before, as much as is left of the keel's mean half-width after what was taped.
            Matrix<double> before = TablePrior.Of(ground.Trust, cells);
            double Mean(Matrix<double> s, int from) =>
                keel.Sum(i => keel.Sum(k => s[from + i, from + k]));
            double sigma =
                TrustSpec.Sigma(ground.Trust.Bends.KeelMm)
                * Math.Sqrt(Math.Min(1, Mean(ground.Known, first) / Mean(before, 0)));
            yield return new(
                FitCauseKind.KeelAlong,
                null,
                Effect(
                    keel.Sum(k => plank.Length[k]),
                    fit.OpensForwardADegree * keel.Sum(k => fit.InboardSlopes[k])
                ),
                One(sigma),
                []
            );
        }
    }

    private static LikelyCause Named(
        SlopedFit fit,
        Cause cause,
        Vector<double> size,
        double odds,
        Ground ground
    )
    {
        Vector<double> explains = cause.Effect * size;
        int most = size.AbsoluteMaximumIndex();
        return new(
            cause.Kind,
            cause.Station,
            cause.Of.Length == 0
                ? null
                : HullAdjuster.Name(ground.Job, ground.Cells.Cells[cause.Of[most]]),
            odds,
            cause.Kind == FitCauseKind.LaidTurned
                ? fit.OutboardMm
                    * size[0]
                    * (Math.PI / 180)
                    * Math.Sign(Math.Sin(fit.OutboardDegrees * Math.PI / 180))
                : size[most],
            explains[0],
            explains[1]
        );
    }

    /// <summary>Where the two foretell what differs most, in standard deviations of the tape; null for the plank's own marks.</summary>
    private static TapePlace? Parting(
        SlopedFit fit,
        Ground ground,
        (Cause Cause, Vector<double> Size) one,
        (Cause Cause, Vector<double> Size) other,
        TapeCandidate[] frames
    )
    {
        double Turned((Cause Cause, Vector<double> Size) of) =>
            of.Cause.Kind == FitCauseKind.LaidTurned ? of.Size[0] : 0;
        double marks =
            Math.Abs(Turned(one) - Turned(other))
            * Math.PI
            / 180
            * fit.OutboardMm
            / TrustSpec.Sigma(ground.Trust.TapeWithinMm);
        double On(TapeCandidate frame, (Cause Cause, Vector<double> Size) of)
        {
            int first = frame.Place.Side == Side.Port ? ground.Cells.Count : 0;
            return of.Cause.Kind == FitCauseKind.KeelAlong
                ? of.Size[0]
                    * Enumerable
                        .Range(0, ground.Cells.Count)
                        .Where(k =>
                            ground.Cells.Cells[k] is { OfKeel: true, Kind: CellKind.HalfBreadth }
                        )
                        .Sum(k => frame.Slopes[first + k])
                : of.Cause.Of.Select((k, i) => frame.Slopes[first + k] * of.Size[i]).Sum();
        }

        (TapeCandidate Frame, double Parts)? best = frames
            .Select(f =>
                ((TapeCandidate, double)?)(f, Math.Abs(On(f, one) - On(f, other)) / f.SigmaMm)
            )
            .MaxBy(f => f!.Value.Item2);
        return best is { } b && b.Parts > marks ? b.Frame.Place : null;
    }
}
