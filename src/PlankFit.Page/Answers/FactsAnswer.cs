using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Export.Lists;
using PlankFit.Export.Summary;
using PlankFit.Export.Tables;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Answers;

/// <param name="Planks">The names of one side's planks, from forward.</param>
internal sealed record RunAnswer(
    string Layer,
    string Name,
    string Side,
    ImmutableArray<string> Planks
);

/// <summary>Planks of which no more is known yet than which there are.</summary>
internal sealed record SkinsAnswer(
    int Turn,
    ImmutableArray<string> Order,
    ImmutableArray<RunAnswer> Runs
);

/// <summary>What is known of the planks of a turn, in the words and figures of the lists.</summary>
internal sealed record FactsAnswer(int Turn, string Name, string Revision)
{
    /// <summary>So many steps a colour has.</summary>
    private const int Colours = 6;

    /// <summary>Columns of the list of planks that the colour by gap is of.</summary>
    private static readonly ImmutableArray<string> Gaps = ["widest gap mm", "widest overlap mm"];

    public required string Units { get; init; }

    /// <summary>Names of planks in the order of the packed bodies.</summary>
    public required ImmutableArray<string> Order { get; init; }

    public required ImmutableArray<RunAnswer> Runs { get; init; }

    /// <summary>Of the list of planks.</summary>
    public required ImmutableArray<string> Columns { get; init; }

    /// <summary>Its rows, in the same order: words, numbers, or nothing.</summary>
    public required ImmutableArray<ImmutableArray<object?>> Planks { get; init; }

    /// <summary>Planks that are not to be sawn any more, by name: sawn, or fitted.</summary>
    public required ImmutableDictionary<string, string> Done { get; init; }

    /// <summary>What each plank's card shows, in the same order, for a mark that is sent when planks may be others.</summary>
    public required ImmutableArray<ImmutableArray<double>> Shapes { get; init; }

    /// <summary>What the last change did, what is lost by it first.</summary>
    public required ImmutableArray<string> Said { get; init; }

    /// <summary>By how much each plank's length is sure, 19 times in 20, mm, in the same order; none where the job does not ask. Nothing for one whose length nobody can tell.</summary>
    public required ImmutableArray<double?> Sure { get; init; }

    /// <summary>By what planks are coloured by that is a length, its steps.</summary>
    public required ImmutableDictionary<string, ScaleAnswer> Scales { get; init; }

    public required ImmutableArray<string> Summary { get; init; }

    public required ImmutableArray<FindingAnswer> Findings { get; init; }

    /// <summary>Names and runs of planks, of which no more is known yet.</summary>
    public static SkinsAnswer Skins(LaidPlanks laid)
    {
        Plank[] planks = [.. All(laid.Plan)];
        return new(laid.Turn, [.. planks.Select(p => p.Id.ToString())], RunsOf(laid.Plan));
    }

    public static FactsAnswer Of(Laid laid)
    {
        BottomPlan plan = laid.Plan;
        Table table = PlankTables.Planks(plan);
        Plank[] planks = [.. All(plan)];
        ImmutableArray<double?> sure = OnPlanks.Of(plan).SureMm(planks);
        double gap = table
            .Rows.SelectMany(r => Gaps.Select(c => r[IndexOf(table, c)].Number ?? 0))
            .DefaultIfEmpty(0)
            .Max();
        return new(laid.Turn, plan.Job.Name, plan.Job.Revision)
        {
            Units = Planking.Units.LengthUnits.Name(plan.Job.Units),
            Order = [.. planks.Select(p => p.Id.ToString())],
            Runs = RunsOf(plan),
            Columns = [.. table.Columns.Select(c => c.Name)],
            Planks = [.. table.Rows.Select(r => r.Select(Cell).ToImmutableArray())],
            Done = planks
                .Where(p => p.IsFixed)
                .ToImmutableDictionary(p => p.Id.ToString(), p => p.IsFitted ? "fitted" : "sawn"),
            Shapes = [.. planks.Select(ShapeMark.Of)],
            Sure = sure,
            Scales = ImmutableDictionary<string, ScaleAnswer>
                .Empty.Add("gap", ScaleAnswer.Of(gap, plan.Job.Units, Colours))
                .Add("sure", ScaleAnswer.Of(sure.Max() ?? 0, plan.Job.Units, Colours)),
            Said = laid.Said,
            Summary = [.. PlanSummary.Of(plan).Lines(plan.Job.Units)],
            Findings = [.. FindingsText.GravestFirst(laid.Findings).Select(FindingAnswer.Of)],
        };
    }

    private static int IndexOf(Table table, string column) =>
        table.Columns.Select(c => c.Name).ToList().IndexOf(column);

    private static IEnumerable<Plank> All(BottomPlan plan) =>
        plan.AllPlankLayers.SelectMany(l => Enum.GetValues<Side>().SelectMany(s => l.Layer.On(s)));

    private static ImmutableArray<RunAnswer> RunsOf(BottomPlan plan) =>
        [
            .. plan.AllPlankLayers.SelectMany(l =>
                Enum.GetValues<Side>()
                    .Select(s => new RunAnswer(
                        l.Layer.Code,
                        l.Layer.Spec.Name,
                        PlankWords.Of(s),
                        [.. l.Layer.On(s).Select(p => p.Id.ToString())]
                    ))
            ),
        ];

    private static object? Cell(TableCell cell) => cell.Text ?? (object?)cell.Number;
}
