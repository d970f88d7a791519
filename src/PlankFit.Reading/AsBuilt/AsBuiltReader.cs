using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.AsBuilt;

/// <summary>The hull as it stands, from the job's [as-built], the file of measurements and the record of sawn planks.</summary>
internal static class AsBuiltReader
{
    public static (AsBuiltSpec Spec, ImmutableArray<Finding> Findings) Read(
        JobDraft draft,
        OffsetTable table,
        string? measuredText,
        string? cutText,
        bool backup
    )
    {
        AsBuiltDraft said = draft.Parts.AsBuilt;
        LengthUnit written = draft.Units ?? LengthUnit.Millimetre,
            shown = draft.Output.Shown(written);
        int plankLayers = draft.Layers.OfType<PlankLayerSpec>().Count();
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        if (said.From is { } from && table.Stations.All(s => s.Name != from))
        {
            findings.Add(
                new(
                    Severity.Error,
                    said.FromAt.ToString(),
                    $"[as-built] from: the table has no station {Quoted.Of(from)}; it has {string.Join(", ", table.Stations.Select(s => s.Name))}"
                )
            );
        }

        string[] cells = [.. OffsetCell.All(table)];
        findings.AddRange(
            said.AsMeasured.Where(c => !cells.Contains(c.Text))
                .Select(c => new Finding(
                    Severity.Error,
                    c.At.ToString(),
                    $"[as-built] as-measured: the table has no value at {Quoted.Of(c.Text)}; a cell is named by its line, measure and station as they stand there, such as {Quoted.Of(cells[0])}"
                ))
        );
        AsBuiltSpec spec = AsBuiltSpec.None;
        if (measuredText is not null)
        {
            (spec, ImmutableArray<Finding> ofFile) = MeasuredText.Read(
                measuredText,
                said.MeasuredPath ?? "measured.csv",
                (written, shown),
                table,
                [.. draft.Parts.Keel.Layers.Select(k => k.Name)],
                plankLayers,
                draft.Hull is { Panel: var bottom }
                    ? new(bottom, draft.Parts.Trust is not null)
                    : null
            );
            findings.AddRange(ofFile);
        }

        ImmutableArray<SawnPlank> sawn = [];
        ImmutableArray<BoardSawnInto> boards = [];
        if (cutText is not null)
        {
            string file = said.SawnPath ?? "sawn-planks.json";
            SawnReading read = SawnPlanksFile.Read(cutText, file, shown);
            if (read.Fault is { } fault)
            {
                findings.Add(
                    fault with
                    {
                        Message = $"{fault.Message}. {ToDo(file, backup, said.SawnFound)}",
                    }
                );
            }
            else if (read.Older)
            {
                findings.Add(
                    new(
                        Severity.Note,
                        file,
                        "it was written by an earlier PlankFit and has no checksum, so that damage to it may go unseen; the next `plankfit sawn` writes it anew with one"
                    )
                );
            }

            boards = read.Boards;
            (sawn, ImmutableArray<Finding> ofLayers) = Numbered(draft, read.Planks, file);
            findings.AddRange(ofLayers);
        }

        return (
            spec with
            {
                From = said.From,
                Fitted = Fitted(draft, findings),
                Sawn = sawn,
                SawnInto = boards,
                SawnFile = said.SawnPath,
                AsMeasured = [.. said.AsMeasured.Select(c => c.Text)],
            },
            findings.ToImmutable()
        );
    }

    /// <summary>Sawn planks by the numbers that their layers now have, panel by panel; those of a panel that the job has not stay on the record as they are.</summary>
    private static (ImmutableArray<SawnPlank> Planks, ImmutableArray<Finding> Findings) Numbered(
        JobDraft draft,
        ImmutableArray<SawnPlank> planks,
        string file
    )
    {
        ImmutableArray<SawnPlank>.Builder numbered = ImmutableArray.CreateBuilder<SawnPlank>();
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (IGrouping<string, SawnPlank> of in planks.GroupBy(p => p.Id.Panel))
        {
            (ImmutableArray<SawnPlank> now, ImmutableArray<Finding> said) = SawnLayers.Numbered(
                [.. of],
                [.. draft.PlankLayersOf(of.Key).Select(l => l.Name)],
                file
            );
            numbered.AddRange(now);
            findings.AddRange(said);
            if (of.Key != PlankId.Bottom && draft.Panels.All(p => p.Panel.Letter != of.Key))
            {
                findings.Add(
                    new(
                        Severity.Warning,
                        file,
                        $"the job has no panel with the letter {of.Key}, of which {NumberText.Count(of.Count(), "plank")} {(of.Count() == 1 ? "is" : "are")} sawn ({of.First().Id}): nothing is laid on from them; give the panel its letter again, or take {(of.Count() == 1 ? "it" : "them")} off the record (`plankfit sawn JOB {of.First().Id} --forget`)"
                    )
                );
            }
        }

        return (numbered.ToImmutable(), findings.ToImmutable());
    }

    /// <summary>What to do about a record that is not taken.</summary>
    /// <param name="found">It lies beside the job, which does not name it.</param>
    public static string ToDo(string file, bool backup, bool found) =>
        backup
            ? $"{SawnPlanksFile.BackupOf(file)} beside it is the record as it was before the last `plankfit sawn`: put it back under the name {Path.GetFileName(file)}, and mark again what was marked last"
            : $"Restore it from a copy; or {(found ? "" : $"take sawn = \"{file}\" out of [as-built], ")}move the file away and mark the planks again, if nothing of the job has changed since they were sawn";

    private static ImmutableArray<PlankId> Fitted(
        JobDraft draft,
        ImmutableArray<Finding>.Builder findings
    )
    {
        var all = new SortedSet<PlankId>();
        foreach ((string text, Place at) in draft.Parts.AsBuilt.Fitted)
        {
            (ImmutableArray<PlankId> ids, string? fault) = PlankIds.Expand(text);
            if (ids is [PlankId first, ..])
            {
                int layers = draft.PlankLayersOf(first.Panel).Count();
                bool panel =
                    first.Panel == PlankId.Bottom
                    || draft.Panels.Any(p => p.Panel.Letter == first.Panel);
                if (!panel && draft.PanelsFaulty)
                {
                    // It may be that of a panel which has a fault of its own.
                    continue;
                }

                fault =
                    !panel ? $"the job has no panel with the letter {first.Panel}"
                    : first.Layer <= layers ? null
                    : first.Panel == PlankId.Bottom
                        ? $"the job has {NumberText.Count(layers, "layer")} of planks"
                    : $"the panel has {NumberText.Count(layers, "layer")} of planks";
            }

            if (fault is not null)
            {
                findings.Add(
                    new(
                        Severity.Error,
                        at.ToString(),
                        $"[as-built] fitted: {Quoted.Of(text)}: {fault}"
                    )
                );
                continue;
            }

            all.UnionWith(ids);
        }

        return [.. all];
    }
}
