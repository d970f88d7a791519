using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>What planks are held with, as the rest of the job has it.</summary>
/// <param name="Fastenings">How many a plank has.</param>
/// <param name="ClampSpacingMm">Null where the job has no timber that says.</param>
internal sealed record PlankHolds(
    Func<PlankId, int> Fastenings,
    double? ClampSpacingMm,
    LengthUnit Unit
)
{
    public Held By(CrewSpec crew) =>
        new(
            crew,
            ClampSpacingMm
                ?? (
                    LengthUnits.IsMetric(Unit)
                        ? TimberSpec.Default.ClampSpacingMm
                        : LengthUnits.MmPerFoot
                ),
            Fastenings
        );
}

/// <summary>With what a crew's planks are held until the glue has cured, and how closely.</summary>
internal sealed record Held(CrewSpec Crew, double EveryMm, Func<PlankId, int> Fastenings)
{
    /// <summary>Clamps on planks that go down one after the other. Where the job names nothing, fastenings hold what has any.</summary>
    public int Of(IEnumerable<Plank> planks) =>
        ClampCounts.Over(
            planks
                .Where(p => Crew.HeldBy is not null || Fastenings(p.Id) == 0)
                .Select(p => p.CutLengthMm),
            EveryMm,
            Crew.HoldsPlanks
        );
}
