using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.AsBuilt;

internal static class AsBuiltPlanner
{
    public static AsBuiltPlan Of(Planked planked, CancellationToken stop)
    {
        PlankingJob job = planked.Job;
        ImmutableDictionary<Side, ImmutableArray<GirthRow>>.Builder girths =
            ImmutableDictionary.CreateBuilder<Side, ImmutableArray<GirthRow>>();
        ImmutableDictionary<Side, ImmutableArray<FairingMove>>.Builder moves =
            ImmutableDictionary.CreateBuilder<Side, ImmutableArray<FairingMove>>();
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            stop.ThrowIfCancellationRequested();
            if (job.AsBuilt.Tables is not null || job.AsBuilt.Girths.Any(g => g.Side == side))
            {
                CorrectedHull corrected = HullAsBuilt.Corrected(job, side);
                girths[side] = corrected.Rows;
                moves[side] = corrected.Moves;
            }
        }

        var standing = new AsBuiltPlan(
            girths.ToImmutable(),
            [.. planked.Drifts.Select(d => WithRemedy(planked, d))],
            []
        )
        {
            Moves = moves.ToImmutable(),
            Sawn = planked.SawnRows,
        };
        return standing with
        {
            Findings = [.. AsBuiltFindings.Of(job, standing), .. SawnFindings.Of(planked)],
        };
    }

    /// <summary>How much each plank still to be sawn would have to give for the last to lie where it was drawn.</summary>
    private static SeamCreep WithRemedy(Planked planked, SeamCreep drift)
    {
        int last = drift.Rows[^1].PlankId.Number;
        Plank[] left =
        [
            .. planked
                .PlankLayers.First(l => l.Number == drift.Layer)
                .Of(drift.Side)
                .Starboard.Where(p =>
                    !p.IsFixed
                    && p.Kind != PlankKind.Corner
                    && (drift.GoingAft ? p.Number > last : p.Number <= last)
                    && p.Ends.Any(e => e.At == drift.At)
                ),
        ];
        double outward = drift.GoingAft ? drift.Rows[^1].OffMm : -drift.Rows[^1].OffMm;

        // The seam lies at the end's own cut to the edge: that turns what the tape reads along the edge into what lies square across.
        double slant =
            left.Length == 0
                ? 1
                : left.Average(p =>
                    Math.Sin(p.Ends.First(e => e.At == drift.At).CutDegrees * Math.PI / 180)
                );
        return drift with { PlanksLeft = left.Length, AcrossMm = outward * slant };
    }
}
