using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Drafts;

namespace PlankFit.Reading.AsBuilt;

/// <summary>The record of sawn planks beside a job that does not name it: it is read, since a plank that is sawn is sawn whatever the job says; and it is told.</summary>
internal static class RecordBeside
{
    public static (JobDraft Draft, ImmutableArray<Finding> Findings) Found(
        JobDraft draft,
        string folder
    )
    {
        AsBuiltDraft said = draft.Parts.AsBuilt;
        if (!File.Exists(Path.Combine(folder, SawnPlanksFile.UsualName)))
        {
            return (draft, []);
        }

        if (said.SawnPath is not { } named)
        {
            return (
                draft with
                {
                    Parts = draft.Parts with
                    {
                        AsBuilt = said with
                        {
                            SawnPath = SawnPlanksFile.UsualName,
                            SawnFound = true,
                        },
                    },
                },
                [
                    new(
                        Severity.Note,
                        SawnPlanksFile.UsualName,
                        "it lies beside the job and is read: planks on it are sawn, and no lay-out moves them"
                    ),
                ]
            );
        }

        return
            Path.GetFullPath(Path.Combine(folder, named))
            == Path.GetFullPath(Path.Combine(folder, SawnPlanksFile.UsualName))
            ? (draft, [])
            : (
                draft,
                [
                    new(
                        Severity.Warning,
                        SawnPlanksFile.UsualName,
                        $"it lies beside the job, which names {named} instead: nothing of it is read; if planks on it are sawn, name it, or move it away if they are not"
                    ),
                ]
            );
    }
}
