using System.Collections.Immutable;
using PlankFit.Export.Cards;
using PlankFit.Export.Whole;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Cards of jobs that are no demos, in all units, on all papers, with all that a job can ask for: they can be read, and nothing is lost on them.</summary>
public sealed class CardsByChanceTests
{
    /// <summary>One in each of feet-inches-eighths, inches and metres, in each of which a fault was found once.</summary>
    private static readonly int[] Few = [7, 18, 65];
    private const int Many = 90;

    [Fact]
    public void EveryCardOfAnyJobCanBeRead()
    {
        int[] seeds = LongRuns.Of(0, Many) is > 0 and int many
            ? [.. Enumerable.Range(0, many)]
            : Few;
        int cards = 0;
        var faults = new List<string>();
        foreach (int seed in seeds)
        {
            if (ChanceAsked.Plan(seed, oneSided: false) is not { } plan)
            {
                continue;
            }

            ImmutableArray<Drawing> sheets = PlankCardPages.Of(OnPlanks.Of(plan));
            faults.AddRange(sheets.SelectMany(Faults).Select(f => $"{seed}: {f}"));
            faults.AddRange(Lost(plan, sheets).Select(f => $"{seed}: {f}"));
            cards += sheets.Length;

            foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
            {
                foreach (Plank plank in layer.Starboard.Where((_, i) => i % 5 == 0))
                {
                    faults.AddRange(
                        Faults(PlankCardPages.Single(OnPlanks.Of(panel), layer, plank))
                            .Select(f => $"{seed}: {f}")
                    );
                }
            }
        }

        Assert.True(cards > 10 * seeds.Length, $"{cards} cards of {seeds.Length} jobs");
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults:\n" + string.Join("\n", faults.Take(60))
        );
    }

    private static IEnumerable<string> Faults(Drawing sheet) =>
        SheetCheck
            .Faults(sheet)
            .Concat(SheetCheck.Struck(sheet, _ => true))
            .Concat(BlockCheck.Intruders(sheet));

    /// <summary>Notes of planks that stand on no card.</summary>
    private static IEnumerable<string> Lost(BottomPlan plan, ImmutableArray<Drawing> sheets)
    {
        string words = string.Join(
            ' ',
            sheets.SelectMany(s => s.Shapes.OfType<Lettering>()).Select(l => l.Text)
        );
        return from of in plan.AllPlankLayers
            from plank in of.Layer.Starboard
            from note in PlankNotes
                .Of(of.Layer, plank, plan.Job.Units)
                .Concat(CardSubject.EdgeLines(plank, plan.Job.Units))
                .Concat(PartNotes.OnCard(OnPlanks.Of(plan).On(of.Panel), plank))
            where !words.Contains(note.TrimEnd('.'), StringComparison.Ordinal)
            select $"{plank.Id} has lost \"{note}\"";
    }
}
