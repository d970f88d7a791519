using System.Text.RegularExpressions;
using PlankFit.Export.Glue;
using PlankFit.Export.Structure;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Glue;

/// <summary>What is lettered on sheets of gluing and structure: cautions where they belong, one notation, and every batch on its card.</summary>
public sealed partial class GlueSheetsTests
{
    [Fact]
    public void EveryBatchHasACardWithItsCautions()
    {
        BottomPlan plan = GluedLaunch.Plan;
        string[] words = Words(GlueSheets.Of(plan, plan.Glue!));
        foreach (GlueBatch batch in plan.Glue!.Batches)
        {
            Assert.Contains($"{batch.Name}   {GlueWords.When(batch.MixAt)}", words);
        }

        int cards = plan.Glue.Batches.Count();
        foreach (
            string caution in new[]
            {
                "A FULL POT HEATS",
                "sensitises",
                "Eyes",
                "mask",
                "Solvent",
                "DATA SHEET",
            }
        )
        {
            Assert.Contains(caution, GlueWords.Caution, StringComparison.Ordinal);
        }

        Assert.True(
            words.Count(w => w.StartsWith("A FULL POT HEATS", StringComparison.Ordinal)) >= cards
        );
    }

    [Fact]
    public void EverySheetWithAStrengthLikeNumberSaysThatItIsNoApproval()
    {
        BottomPlan plan = GluedLaunch.Plan;
        int sheets = 0;
        foreach (Drawing sheet in StructureSheets.Of(plan, plan.Structure!))
        {
            string all = string.Join(' ', Words([sheet]));
            Assert.Contains("NO APPROVAL", all, StringComparison.Ordinal);
            if (all.Contains("Stiffness", StringComparison.Ordinal))
            {
                Assert.Contains("qualified person", all, StringComparison.Ordinal);
                sheets++;
            }
        }

        Assert.True(sheets >= 4);
    }

    /// <summary>Grams and millilitres stand on cards besides ounces; nothing else is metric where lengths are in feet and inches.</summary>
    [Fact]
    public void InFeetAndInchesLengthsAndTemperaturesAreNotMetric()
    {
        BottomPlan plan = GluedLaunch.Imperial;
        string[] words =
        [
            .. Words(GlueSheets.Of(plan, plan.Glue!)),
            .. Words(StructureSheets.Of(plan, plan.Structure!)),
            .. plan.Glue!.Findings.Select(f => f.Message),
            .. plan.Structure!.Findings.Select(f => f.Message),
        ];
        // A fastening has the name that the job gives it.
        Assert.DoesNotContain(
            words.Where(w =>
                !w.Contains("screw", StringComparison.Ordinal)
                && !w.Contains("staple", StringComparison.Ordinal)
            ),
            w => Metric().IsMatch(w)
        );
    }

    [Fact]
    public void InMillimetresNothingIsInInches()
    {
        BottomPlan plan = GluedLaunch.Plan;
        Assert.DoesNotContain(
            Words(GlueSheets.Of(plan, plan.Glue!))
                .Concat(Words(StructureSheets.Of(plan, plan.Structure!))),
            w => Imperial().IsMatch(w)
        );
    }

    private static string[] Words(IEnumerable<Drawing> sheets) =>
        [.. sheets.SelectMany(s => s.Shapes.OfType<Lettering>()).Select(l => l.Text)];

    [GeneratedRegex(@"\d ?(mm|m²|m³|kg/m|kPa|MPa|C)\b")]
    private static partial Regex Metric();

    [GeneratedRegex(@"\d ?(in|ft|oz|lb|psi|Mpsi|F|gal)\b")]
    private static partial Regex Imperial();
}
