using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>The hull as it stands, from the job's [standing], the file of measurements and the record of sawn planks.</summary>
internal static class StandingReader
{
    public static (StandingSpec Spec, ImmutableArray<Finding> Findings) Read(
        JobDraft draft,
        OffsetTable table,
        string? measuredText,
        string? cutText
    )
    {
        StandingDraft said = draft.Parts.Standing;
        int plankLayers = draft.Layers.OfType<PlankLayerSpec>().Count();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (said.From is { } from && table.Stations.All(s => s.Name != from))
        {
            findings.Add(
                new(
                    Severity.Error,
                    said.FromAt.ToString(),
                    $"[standing] from: the table has no station {Quoted.Of(from)}; it has {string.Join(", ", table.Stations.Select(s => s.Name))}"
                )
            );
        }

        StandingSpec spec = StandingSpec.None;
        if (measuredText is not null)
        {
            (spec, ImmutableArray<Finding> ofFile) = MeasuredText.Read(
                measuredText,
                said.MeasuredPath ?? "measured.csv",
                draft.Units ?? LengthUnit.Millimetre,
                table,
                [.. draft.Parts.Keel.Layers.Select(k => k.Name)],
                plankLayers
            );
            findings.AddRange(ofFile);
        }

        ImmutableArray<CutPlank> sawn = [];
        if (cutText is not null)
        {
            (sawn, Finding? fault) = CutPlanksFile.Read(
                cutText,
                said.CutPath ?? "cut-planks.json",
                plankLayers
            );
            if (fault is not null)
            {
                findings.Add(fault);
            }
        }

        return (
            spec with
            {
                From = said.From,
                Fitted = Fitted(said, plankLayers, findings),
                Cut = sawn,
                CutFile = said.CutPath,
            },
            findings.ToImmutable()
        );
    }

    private static ImmutableArray<string> Fitted(
        StandingDraft said,
        int plankLayers,
        ImmutableArray<Finding>.Builder findings
    )
    {
        var all = new SortedSet<string>(StringComparer.Ordinal);
        foreach ((string text, Place at) in said.Fitted)
        {
            (ImmutableArray<string> ids, string? fault) = PlankIds.Expand(text);
            if (ids is [string first, ..] && PlankIds.Parse(first)!.Value.Layer > plankLayers)
            {
                fault = $"the job has {plankLayers} layer(s) of planks";
            }

            if (fault is not null)
            {
                findings.Add(
                    new(
                        Severity.Error,
                        at.ToString(),
                        $"[standing] fitted: {Quoted.Of(text)}: {fault}"
                    )
                );
                continue;
            }

            all.UnionWith(ids);
        }

        return [.. all];
    }
}
