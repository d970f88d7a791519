using PlankFit.App.Laying;
using PlankFit.Draughting.Tiling;
using PlankFit.Export;
using PlankFit.Export.Binding;
using PlankFit.Export.Framing;
using PlankFit.Export.Keel;
using PlankFit.Export.Patterns;
using PlankFit.Export.SettingUp;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>
/// Every sheet that is laid, of jobs that are no demos, in all units, on all papers, with all that a job can ask for: nothing stands upon anything else, nothing
/// leaves its sheet, and no name is lost. Cards and cut sheets have laws of their own beside this.
/// </summary>
public sealed class SheetsByChanceTests
{
    private const int Many = 63;

    [Fact]
    public void EverySheetOfAnyJobCanBeRead()
    {
        // Where long runs are asked for, as in CI.
        int[] seeds = LongRuns.Asked ? [.. Enumerable.Range(0, Many)] : [];
        int sheets = 0;
        var faults = new List<string>();
        foreach (int seed in seeds)
        {
            if (ChanceAsked.Plan(seed) is not { } plan)
            {
                continue;
            }

            foreach ((string of, Drawing sheet) in Sheets(plan))
            {
                sheets++;
                faults.AddRange(Faults(sheet).Select(f => $"{seed} {of}: {f}"));
            }

            faults.AddRange(Lost(plan).Select(f => $"{seed} lost: {f}"));
        }

        Assert.True(sheets >= 10 * seeds.Length, $"{sheets} sheets of {seeds.Length} jobs");
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults of {sheets}:\n" + string.Join("\n", faults.Take(60))
        );
    }

    private static IEnumerable<string> Faults(Drawing sheet) =>
        SheetCheck
            .Faults(sheet)
            .Concat(SheetCheck.Struck(sheet, _ => true))
            .Concat(SheetCheck.Ringed(sheet))
            .Concat(BlockCheck.Intruders(sheet));

    private static IEnumerable<(string Of, Drawing Sheet)> Sheets(BottomPlan plan)
    {
        (string Name, IReadOnlyList<Drawing> Pages)[] sections =
        [
            .. LayFiles.All(plan).Sheets.Select(s => (s.Name, s.Pages.Value)),
        ];
        Drawing contents = BenchBook
            .Of(plan.Job, sections.Select(s => new BoundSheets(s.Name, s.Pages)))
            .Pages[0];
        return
        [
            .. sections
                .Where(s => s.Name != "Plank cards")
                .SelectMany(s => s.Pages.Select(p => (s.Name, p))),
            // The number in the book stands below the frame.
            ("contents", contents with { Shapes = contents.Shapes[..^1] }),
            .. Patterns(plan),
            .. Long(plan),
        ];
    }

    /// <summary>Patterns on long pages and cut up, whichever the job asks for.</summary>
    private static IEnumerable<(string, Drawing)> Patterns(BottomPlan plan)
    {
        var options = new TilingOptions(
            OutputAsked.Paper(plan.Job.Output),
            Inches: !LengthUnits.IsMetric(plan.Job.Units)
        );
        return from l in plan.AllPlankLayers
            let shown = OnPlanks.Of(l.Panel)
            from side in new[] { Side.Starboard, Side.Port }
            from page in FullSizePattern
                .Of(shown, l.Layer, side)
                .Select(p => ("long pattern", p))
                .Concat(
                    FullSizePattern
                        .AllBare(shown, l.Layer, side)
                        .SelectMany(p => Tiler.Pages(p, options))
                        .Select(p => ("tiled pattern", p))
                )
            select page;
    }

    /// <summary>The keel's edges and sections in true size.</summary>
    private static IEnumerable<(string, Drawing)> Long(BottomPlan plan) =>
        [
            .. (plan.Keel?.Layers ?? [])
                .Where(l => !l.Between.IsEmpty)
                .SelectMany(l => LongPages.Of(plan.Job, KeelEdgePattern.OnPaper(plan, l)))
                .Select(p => ("keel edge", p)),
            .. (plan.SettingUp?.Sections ?? [])
                .SelectMany(s =>
                    LongPages.Of(plan.Job, SectionDrawing.OnPaper(plan.Job, plan.SettingUp!, s))
                )
                .Select(p => ("section", p)),
        ];

    /// <summary>Names that a drawing must have and has not.</summary>
    private static IEnumerable<string> Lost(BottomPlan plan)
    {
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            string[] said = Said(BottomPlanView.Of(panel, layer));
            foreach (string number in layer.Starboard.Select(p => p.Id.Short).Except(said))
            {
                yield return $"{layer.Code}: the plan has no number {number}";
            }
        }

        foreach (SnapFace face in plan.Framing.Snaps)
        {
            string[] said =
            [
                .. SnapPages
                    .Of(plan, plan.Framing with { Snaps = [face] })
                    .Where(p => p.Shapes.Any(s => s.Layer == Layers.Behind))
                    .SelectMany(Said),
            ];
            foreach (
                string name in face
                    .Marks.Select(m => m.Of)
                    .Concat(face.Across.Select(a => a.Of))
                    .Select(FramingWords.Name)
                    .Distinct()
            )
            {
                if (!said.Any(s => s.StartsWith(name, StringComparison.Ordinal)))
                {
                    yield return $"lines to snap before layer {face.Layer} do not name {name}";
                }
            }
        }
    }

    private static string[] Said(Drawing sheet) =>
        [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];
}
