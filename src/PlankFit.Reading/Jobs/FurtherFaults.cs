using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Offsets;

namespace PlankFit.Reading.Jobs;

/// <summary>
/// What else is wrong with a job that has faults already: its sound tables held against the table of offsets, as the whole job would be before it is planned. So
/// nobody mends five faults only to be told of a sixth.
/// </summary>
internal static class FurtherFaults
{
    /// <summary>Planks cannot be judged without these.</summary>
    private static readonly ImmutableArray<string> Needed =
    [
        "",
        JobKeys.Job.Name,
        JobKeys.Hull.Name,
        JobKeys.Layer.Name,
    ];

    /// <param name="reading">A table without faults, which has all that the job names.</param>
    /// <param name="standing">As far as it has no fault.</param>
    public static IEnumerable<Finding> Of(
        JobDraft draft,
        OffsetsReading reading,
        AsBuiltSpec standing
    )
    {
        if (
            draft is not { Faulty: { } faulty, Hull: not null, Units: not null }
            || faulty.Overlaps(Needed)
            // Where all planks lie on panels that have faults there is nothing to judge.
            || !draft.AllLayers.Any(l => l is PlankLayerSpec) && faulty.Contains(JobKeys.Panel.Name)
        )
        {
            return [];
        }

        bool Sound(JobKey table) => !faulty.Contains(table.Name);

        // What [keel] itself says is judged of planks that are laid.
        bool keelIsSound = Sound(JobKeys.KeelLayer);
        JobParts parts = draft.Parts;
        JobDraft sound = draft with
        {
            Panels = [.. draft.Panels.Where(p => p.Layers.Any(l => l is PlankLayerSpec))],
            Ends = Sound(JobKeys.Ends) ? draft.Ends : EndRules.Default,
            Parts = parts with
            {
                Keel = keelIsSound ? parts.Keel : KeelSpec.None,
                SettingUp = Sound(JobKeys.SettingUp) ? parts.SettingUp : null,
                Behind = Sound(JobKeys.Behind) ? parts.Behind : [],
                // What it is cut from is looked for among the cloths.
                Sheathing = Sound(JobKeys.Sheathing) && Sound(JobKeys.Cloth) ? parts.Sheathing : [],
            },
        };
        Job job = DraftedJob.Of(
            sound,
            reading,
            Sound(JobKeys.AsBuilt) ? standing : AsBuiltSpec.None,
            ""
        );
        return PlankCount.Check(draft, job) is { IsEmpty: false } beyond
            ? beyond
            : JobChecks
                .Of(job)
                // The master plank is measured from the keel.
                .Where(f => keelIsSound || f.About.Key is not ("layer.master" or "layer.angle"))
                .Select(draft.Places.Placed);
    }
}
