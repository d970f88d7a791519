using PlankFit.App.Laying;
using PlankFit.Export.Story;
using PlankFit.Export.Summary;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Words;

/// <summary>All sheets, lists and messages of a job in feet and inches write lengths in one way, whatever the job asks for.</summary>
public sealed class OneNotationTests
{
    private const int Few = 2;
    private const int Many = 60;

    /// <summary>Laid out in the stock: more take long, and say nothing else.</summary>
    private const int FewPieces = 12;

    /// <summary>The square that proves the printer is 100 mm and 4 inches on every paper, and the places along a section are parts of it.</summary>
    private static readonly string[] NoLengths =
    [
        "100 mm",
        "100 mm both ways",
        "1/4",
        "1/2",
        "3/4",
    ];

    /// <summary>What is no length of the job within longer words: a place along a section, what a source has, and the square on each page.</summary>
    private static readonly string[] Quoted =
    [
        "1/2, half way",
        "1.2 m apart",
        "1.2 m",
        "100 mm long both ways",
    ];

    [Fact]
    public void EveryTextOfAJobByChanceIsInItsNotation() => Hold(Texts, _ => true, Few, Many, 1000);

    /// <summary>What takes longest: `explain` of some planks, panels laid flat, patterns in pages, cut sheets, lists of boards and labels.</summary>
    [Fact]
    public void ExplainLaidFlatTiledAndCutSheetsAreInItToo()
    {
        // Where long runs are asked for, as in CI.
        if (LongRuns.Asked)
        {
            Hold(Further, j => j.Nest is not null, 1, Many / 4, 200);
        }
    }

    private static void Hold(
        Func<BottomPlan, ReadResult, IEnumerable<(string Where, string Text)>> told,
        Func<Job, bool> asked,
        int few,
        int many,
        int least
    )
    {
        int jobs = 0,
            texts = 0;
        var faults = new List<string>();
        for (int seed = 0; jobs < LongRuns.Of(few, many); seed++)
        {
            using var temp = new TempFolder();
            string path = ChanceJob.Write(seed, temp.File("job"));
            bool alone = seed % 4 == 1;
            if (alone)
            {
                File.WriteAllText(
                    path,
                    File.ReadAllText(path)
                        .Replace(
                            "[output]\n",
                            "[output]\nlengths = \"inches\"\n",
                            StringComparison.Ordinal
                        )
                );
            }

            if (
                JobReader.Read(path) is not { Job: { } job } read
                || LengthUnits.IsMetric(job.Units)
                || !asked(job)
            )
            {
                continue;
            }

            Assert.Equal(alone ? LengthUnit.Inch : LengthUnit.Foot, job.Units);
            if (
                BottomPlanner.Plan(job with { Nest = null }, null, CancellationToken.None).Plan
                is not { } plan
            )
            {
                continue;
            }

            jobs++;
            foreach ((string where, string text) in told(plan, read))
            {
                texts++;
                faults.AddRange(
                    LengthsTold
                        .Faults(text, job.Units)
                        .Concat(
                            where is "summary" or "finding" or "explain" or "laid-flat"
                                ? []
                                : LengthsTold.Angles(text)
                        )
                        .Select(f => $"{seed}, {where}: {f}")
                );
            }
        }

        Assert.True(texts > least * jobs, $"{texts} texts of {jobs} jobs");
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults:\n" + string.Join("\n", faults.DistinctBy(Kind).Take(60))
        );
    }

    /// <summary>The same fault with other figures is not told again.</summary>
    private static string Kind(string fault) =>
        string.Concat(fault.Where(c => !char.IsDigit(c) && c is not (' ' or '/')));

    private static IEnumerable<(string Where, string Text)> Texts(
        BottomPlan plan,
        ReadResult read
    ) =>
        [
            .. Lettered(AllSheets.Of(plan)),
            .. PlanSummary
                .Of(plan)
                .Lines(plan.Job.Units)
                .Select(l => ("summary", WithoutQuotes(l))),
            .. plan
                .Findings.Concat(read.Findings)
                .Select(f => ("finding", WithoutQuotes(f.Message))),
        ];

    private static IEnumerable<(string Where, string Text)> Further(
        BottomPlan plan,
        ReadResult read
    )
    {
        BottomPlan asked = plan with { Job = plan.Job with { Nest = read.Job!.Nest } },
            nested = read.Job.Nest is { } nest && !asked.PiecesToSaw().IsEmpty
                ? asked with
                {
                    Nest = NestPlanner.Again(
                        null,
                        nest,
                        [.. asked.PiecesToSaw().Take(FewPieces)],
                        plan.Job.Units,
                        new Progress<NestProgress>(),
                        () => new(CancellationToken.None)
                    ),
                }
                : plan;
        Plank[] explained =
        [
            .. plan.AllPlankLayers.SelectMany(l =>
                new[] { l.Layer.Starboard[0], l.Layer.Starboard[l.Layer.Starboard.Length / 2] }
            ),
        ];
        return
        [
            .. explained.SelectMany(p =>
                PlankStory
                    .Of(plan.PanelOf(p.Id), plan.LayerOf(p.Id), p)
                    .SelectMany(s => s.Lines)
                    .Select(l => ("explain", WithoutQuotes(l)))
            ),
            .. (nested.Nest?.Findings ?? []).Select(f => ("finding", WithoutQuotes(f.Message))),
            .. nested.Nest is null
                ? []
                : NestTold
                    .First(nested)
                    .Concat(NestTold.Lines(nested))
                    .Select(l => ("summary", WithoutQuotes(l))),
            .. Lettered(AllSheets.LaidFlat(plan)),
            .. Lettered(AllSheets.Boards(nested))
                .Select(t => (t.Where, WithoutNames(nested.Nest!, t.Text))),
            .. Lettered(AllSheets.Tiled(plan)),
        ];
    }

    private static IEnumerable<(string Where, string Text)> Lettered(
        IEnumerable<(string File, Drawing Sheet)> sheets
    ) =>
        sheets
            .SelectMany(s =>
                s.Sheet.Shapes.OfType<Lettering>()
                    .Select(l => (s.File, Text: WithoutQuotes(l.Text)))
            )
            .Where(t => !NoLengths.Contains(t.Text));

    /// <summary>What is left over of Y-2 is Y-2-1-1, which is no length.</summary>
    private static string WithoutNames(NestPlan nest, string told) =>
        nest
            .Boards.Select(b => b.Id)
            .Concat(Offcuts.Of(nest).Select(o => o.Id))
            .OrderByDescending(n => n.Length)
            .Aggregate(told, (text, name) => text.Replace(name, "", StringComparison.Ordinal));

    private static string WithoutQuotes(string told) =>
        Quoted.Aggregate(told, (text, quote) => text.Replace(quote, "", StringComparison.Ordinal));
}
