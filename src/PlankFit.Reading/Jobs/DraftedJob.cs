using PlankFit.Planking.Jobs;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Offsets;

namespace PlankFit.Reading.Jobs;

/// <summary>A draft and its table of offsets to a job.</summary>
internal static class DraftedJob
{
    /// <summary>Without its boards.</summary>
    /// <param name="draft">With unit and hull; what has faults is to be left out of it by the caller.</param>
    public static Job Of(
        JobDraft draft,
        OffsetsReading reading,
        AsBuiltSpec standing,
        string revision
    )
    {
        double? from = reading.ReversedFromMm;
        JobParts parts = from is { } h ? Positions.Turned(draft.Parts, h) : draft.Parts;
        var planking = new PlankingJob(
            draft.Output.Shown(draft.Units!.Value),
            reading.Table,
            draft.Hull!,
            from is { } f ? Positions.Turned(draft.Layers, f) : draft.Layers,
            from is { } g ? Positions.Turned(draft.Ends, g) : draft.Ends,
            draft.Limits
        )
        {
            Keel = parts.Keel,
            AsBuilt = standing,
            Timber = parts.Timber,
        };
        return new Job(planking)
        {
            Name = draft.Name ?? "",
            WrittenIn = draft.Units!.Value,
            PositionsFromMm = from,
            Revision = revision,
            AsWritten = new([.. draft.Offsets.AsWritten.Select(c => c.Cell)]),
            Panels = [.. draft.Panels.Select(p => Planking(p, planking, from))],
            Output = draft.Output,
            SettingUp = parts.SettingUp,
            Joints = parts.Joints,
            Framing = parts.Behind,
            Fastenings = parts.Fastenings,
            Trust = parts.Trust,
            Cloths = parts.Cloths,
            Sheathing = parts.Sheathing,
            Glue = parts.Glue,
            Structure = parts.Structure,
        };
    }

    /// <summary>Another panel's planking; all but the panel, its layers and its ends is the bottom's.</summary>
    private static PlankingJob Planking(PanelDraft panel, PlankingJob bottom, double? from) =>
        bottom with
        {
            Hull = bottom.Hull with { Panel = panel.Panel },
            Layers = from is { } f ? Positions.Turned(panel.Layers, f) : panel.Layers,
            Ends = from is { } g ? Positions.Turned(panel.Ends, g) : panel.Ends,
            Keel = KeelSpec.None,
        };
}
