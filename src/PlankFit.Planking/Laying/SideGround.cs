using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;

namespace PlankFit.Planking.Laying;

/// <summary>What all layers of one side are laid on, in the starboard frame: the job, the hull as it stands there, the stack and the keel.</summary>
internal sealed record SideGround(
    PlankingJob Job,
    HullSurface Hull,
    Side Side,
    Stack Stack,
    BuiltKeel Keel
)
{
    public static SideGround Of(
        PlankingJob job,
        HullSurface hull,
        Side side,
        LayWorkings? before
    ) => new(job, hull, side, Stack.Of(job), BuiltKeel.Of(job, hull, side, before?.Keels));
}
