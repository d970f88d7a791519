using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.AsBuilt;

/// <summary>What a person should know of the hull as it stands.</summary>
public static class AsBuiltFindings
{
    /// <summary>A frame further off than this is more likely a tape misread, mm: our own bound, no source.</summary>
    private const double PlausibleMm = 25;

    /// <summary>As in a table of offsets: less than this is not told from the reading, mm.</summary>
    private const double FairMm = 2.5;

    internal static IEnumerable<Finding> Of(PlankingJob job, AsBuiltPlan standing) =>
        standing
            .Girths.OrderBy(g => g.Key)
            // A hull that is adjusted to all readings has its own word for each.
            .SelectMany(g => job.AsBuilt.Tables is null ? OfGirths(job, g.Key, g.Value) : [])
            .Concat(standing.Drifts.Select(d => OfDrift(job, d)));

    private static IEnumerable<Finding> OfGirths(
        PlankingJob job,
        Side side,
        ImmutableArray<GirthRow> rows
    )
    {
        string Mm(double mm) => LengthText.ForPaper(Math.Abs(mm), job.Units);
        string on = Word(side);
        GirthRow[] measured = [.. rows.Where(r => r.MeasuredMm is not null)];
        foreach (GirthRow row in measured.Where(r => Math.Abs(r.MovedMm) > PlausibleMm))
        {
            yield return new(
                Severity.Warning,
                $"girth, station {row.Station}, {on}",
                $"it was measured {Mm(row.MovedMm)} {(row.MovedMm > 0 ? "longer" : "shorter")} than drawn: measure again before planks are cut to it"
            )
            {
                IsCause = true,
            };
        }

        if (measured.Length >= 6)
        {
            var judged = LeaveOneOut.Of(
                [.. measured.Select(r => r.PositionMm)],
                [.. measured.Select(r => r.MovedMm)],
                3
            );
            int k = Enumerable.Range(0, measured.Length).MaxBy(i => judged.Gains[i]);
            if (k > 0 && k < measured.Length - 1 && Math.Abs(judged.Residuals[k]) >= FairMm)
            {
                yield return new(
                    Severity.Warning,
                    $"girth, station {measured[k].Station}, {on}",
                    $"it stands {Mm(judged.Residuals[k])} {(judged.Residuals[k] > 0 ? "beyond" : "short of")} the run of the others: measure again, or fair the frame"
                )
                {
                    IsCause = true,
                };
            }
        }

        if (measured.Length > 0)
        {
            GirthRow worst = rows.MaxBy(r => Math.Abs(r.MovedMm))!;
            yield return new(
                Severity.Note,
                $"girths, {on}",
                $"the bottom is bent to {(measured.Length == 1 ? "the girth" : $"the {measured.Length} girths")} measured: the most at station {worst.Station}, by {Mm(worst.MovedMm)} {(worst.MovedMm < 0 ? "inward" : "outward")}; planks are cut to the hull as it stands"
            );
        }
    }

    private static Finding OfDrift(PlankingJob job, SeamCreep drift)
    {
        string Mm(double mm) => LengthText.ForPaper(Math.Abs(mm), job.Units);
        DriftRow last = drift.Rows[^1];
        string where =
            $"layer {drift.Layer}, {Word(drift.Side)}, at the {(drift.At == PanelEdge.Lower ? "keel" : "chine")}, going {(drift.GoingAft ? "aft" : "forward")}";
        if (drift.SincePlank is null)
        {
            string count =
                drift.Rows.Length == 1
                    ? "one seam measured lies"
                    : $"{drift.Rows.Length} seams measured lie";
            return new(
                Severity.Note,
                where,
                $"{count} where drawn within what a tape tells; the last, {last.PlankId}, is {Mm(last.OffMm)} off"
            );
        }

        string sense = last.OffMm > 0 ? "aft" : "forward";
        return new(
            Severity.Warning,
            where,
            $"the seams have crept {sense} since {drift.SincePlank}: {last.PlankId} is {Mm(last.OffMm)} off, about {Rate(drift.MmAPlank, job.Units)} a plank; the planks not yet cut are laid on from its edge as it lies. {Advice(drift, job.Units)}"
        );
    }

    /// <summary>Finer than paper: a tenth of a millimetre a plank is a plank's width lost in a boat.</summary>
    public static string Rate(double mm, LengthUnit units) =>
        LengthUnits.IsMetric(units)
            ? NumberText.Trimmed(Math.Abs(mm), 2) + " mm"
            : LengthText.Fine(Math.Abs(mm), units);

    private static string Advice(SeamCreep drift, LengthUnit units)
    {
        string edge = drift.At == PanelEdge.Lower ? "keel" : "chine";
        if (drift.AcrossMm <= 0)
        {
            return "Planks take less room than their width: look at the stock's width, and for edges planed too far; wider planks would bring it back, and without them the last piece takes it up";
        }

        string back = drift.NarrowerMm is { } mm
            ? $"; to end where drawn, plane about {Rate(mm, units)} off the {edge} end of each of the {drift.PlanksLeft} planks left, tapering to nothing where the other end has not crept"
            : "";
        return $"Planks take more room than their width: look for open seams and thick glue{back}";
    }

    private static string Word(Side side) => side == Side.Starboard ? "starboard" : "port";
}
