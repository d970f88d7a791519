using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Story;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Explaining;

/// <summary>Tells how one plank came to be, from the offsets that bear on it to the line of its DXF file.</summary>
public static class ExplainRun
{
    public static RunReport Run(
        RunRequest request,
        string plankId,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        var planned = PlannedJob.From(request.JobPath, progress, timings, stop);
        return planned.Plan is { } plan ? Of(plan, plankId, request.Json) : planned.Faults!;
    }

    /// <summary>The same of a plan in hand.</summary>
    public static RunReport Of(BottomPlan plan, string plankId, bool json = false)
    {
        if (PieceId.Parse(plankId) is not { } named || plan.Find(named.Plank) is not { } plank)
        {
            return RunReport.Faults([new(Severity.Error, plankId, NoSuchPlank(plan, plankId))]);
        }

        plan = plan.PanelOf(plank.Id);
        JointedPlank? pieced = plan.Joints.On(plank.Id);
        if (named.Letter is not null && pieced?.Pieces.Any(p => p.Id == named) != true)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    plankId,
                    pieced is null
                        ? $"{plank.Id} is of one piece: ask for it by that name"
                        : $"{plank.Id} has no piece '{named.Letter}'; it has {string.Join(", ", pieced.Pieces.Select(p => p.Id))}"
                ),
            ]);
        }

        PlankLayerPlan layer = plan.LayerOf(plank.Id);
        ImmutableArray<StoryStep> steps =
        [
            .. PlankStory.Of(plan, layer, plank),
            DxfStep.Of(plan, plank),
        ];
        string text = json
            ? Json(plank, steps)
            : string.Join("\n", Lines(plank, layer, named, steps)) + "\n";
        return new(ExitCode.Done, [], [], text);
    }

    private static IEnumerable<string> Lines(
        Plank plank,
        PlankLayerPlan layer,
        PieceId named,
        ImmutableArray<StoryStep> steps
    )
    {
        yield return $"{(named.Letter is null ? "" : $"{named}, a piece of ")}{plank.Id}: {PlankWords.Of(plank.Side)}, layer {layer.Code} ({layer.Spec.Name}), plank {plank.Number} of {layer.Starboard.Length} from forward, {PlankWords.Of(plank.Kind)}";
        if (plank.IsFixed)
        {
            yield return plank.IsSawn
                ? "It is sawn: its shape and sizes are those of the record, whatever the job says now. What follows is how its place is worked out today, and what a plank there would be."
                : "It is fitted: it stays where it is. What follows is how its place is worked out today.";
        }

        for (int i = 0; i < steps.Length; i++)
        {
            yield return "";
            yield return $"{i + 1}. {steps[i].Heading}";
            foreach (string line in steps[i].Lines)
            {
                yield return "   " + line;
            }
        }
    }

    private static string Json(Plank plank, ImmutableArray<StoryStep> steps) =>
        JsonSerializer.Serialize(
            new
            {
                plank = plank.Id.ToString(),
                steps = steps.Select(s => new { heading = s.Heading, lines = s.Lines.ToArray() }),
            },
            new JsonSerializerOptions
            {
                WriteIndented = true,
                Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            }
        ) + "\n";

    private static string NoSuchPlank(BottomPlan plan, string id)
    {
        IEnumerable<string> ranges = plan
            .AllPlankLayers.Select(a => a.Layer)
            .Select(l =>
                $"{l.Starboard[0].Id} to {l.Starboard[^1].Id} and {l.Port[0].Id} to {l.Port[^1].Id}"
            );
        return $"the job has no plank '{id}'; it has {string.Join(", ", ranges)}";
    }
}
