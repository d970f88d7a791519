using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Planking.Whole;

/// <summary>Every fault that a job can be told from itself and its table alone, all at once and before anything is laid.</summary>
public static class JobChecks
{
    public static ImmutableArray<Finding> Of(Job job) => Of(job, false);

    /// <param name="bottomIsSound">The bottom's planking is known to have no fault.</param>
    internal static ImmutableArray<Finding> Of(Job job, bool bottomIsSound) =>
        [
            .. bottomIsSound || OtherPanels.BottomIsBare(job)
                ? []
                : PlankingChecks.Of(OtherPanels.Apart(job)),
            .. job.Panels.SelectMany(p => PlankingChecks.Of(OtherPanels.Apart(job, p))),
            .. FramingChecks.Of(job.Framing, job.Offsets),
            .. job.SettingUp is { } settingUp
                ? SettingUpChecks.Of(settingUp, job.Offsets, job.Hull)
                : [],
            .. SheathingChecks.Of(job.Sheathing, job.Cloths, job.Layers, job.Offsets, job.Units),
        ];
}
