using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Export.Glue;
using PlankFit.Export.Sheathing;
using PlankFit.Export.Structure;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Units;
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
                "CAN BURN",
                "sensitises",
                "Eyes",
                "mask",
                "glass",
                "Shears",
                "Solvent",
                "no flame",
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

    /// <summary>What of a batch is for the wood under a cloth adds up to what is reckoned for priming it, and every card of it says so.</summary>
    [Fact]
    public void TheWoodsPartOfABatchIsTold()
    {
        Job job = GluedLaunch.Plan.Job;
        BottomPlan plan = GluedLaunch.Of(
            job with
            {
                Glue = job.Glue! with { PrimingGsm = new(100, 150, 200) },
            }
        );
        string words = string.Join(' ', Words(GlueSheets.Of(plan, plan.Glue!)));
        GlueStage[] cloths = [.. plan.Glue!.Stages.Where(s => s.Use == GlueUse.WettingOut)];
        Assert.Contains(cloths, s => s.ForWood > 0.1);
        foreach (GlueStage stage in cloths)
        {
            Assert.Equal(
                plan.Glue.Amounts.Where(l => l.Where == stage.Layer && l.Use == GlueUse.Priming)
                    .Sum(l => l.Kg.Usual),
                stage.Batches.Sum(b => stage.ForWood * b.Grams) / 1000,
                1e-6
            );
            foreach (GlueBatch batch in stage.Batches.Where(_ => stage.ForWood > 0))
            {
                string part = AmountText.Grams(stage.ForWood * batch.Grams, plan.Job.Units);
                Assert.Contains(
                    $"Prime the wood under this part with {part}",
                    Regex.Replace(words, " +", " "),
                    StringComparison.Ordinal
                );
            }
        }
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

    /// <summary>Grams and millilitres stand in brackets after ounces; nothing else is metric where lengths are in feet and inches.</summary>
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
            .. Words(SheathingSheets.Of(plan, plan.Sheathing!)),
        ];
        // A fastening has the name that the job gives it.
        Assert.DoesNotContain(
            words.Where(w =>
                !w.Contains("screw", StringComparison.Ordinal)
                && !w.Contains("staple", StringComparison.Ordinal)
            ),
            w => Metric().IsMatch(Beside().Replace(w, ""))
        );
        string all = string.Join(' ', words);
        foreach (string unit in new[] { "oz/sq yd", "US qt", "US fl oz", "lb a US gallon", " lb" })
        {
            Assert.Contains(unit, all, StringComparison.Ordinal);
        }
    }

    /// <summary>What the sheets of both say, read back, is one and the same amount.</summary>
    [Fact]
    public void WhatIsWrittenInEitherUnitsIsTheSameAmount()
    {
        LengthUnit[] both = [LengthUnit.Millimetre, LengthUnit.Foot];
        foreach (GlueBatch batch in GluedLaunch.Plan.Glue!.Batches)
        {
            string[] mass = [.. both.Select(u => AmountText.Grams(batch.Grams, u))],
                volume = [.. both.Select(u => AmountText.Millilitres(batch.Parts.ResinLitres, u))];
            Assert.Equal($"({mass[0]})", mass[1][mass[1].IndexOf('(')..]);
            Assert.Equal($"({volume[0]})", volume[1][volume[1].IndexOf('(')..]);
            Assert.Equal(batch.Grams, First(mass[1]) * 28.349523125, 1.5);
            Assert.Equal(1000 * batch.Parts.ResinLitres, First(volume[1]) * 29.5735295625, 1.5);
        }

        foreach (AmountLine line in GluedLaunch.Plan.Glue!.Amounts)
        {
            double kg = line.Kg.Usual,
                litres = line.Mix.Ratio.Parts(kg).ResinLitres;
            Assert.Equal(kg, First(AmountText.Kg(kg, LengthUnit.Foot)) * 0.45359237, 0.0024);
            Assert.Equal(
                litres,
                First(AmountText.Litres(litres, LengthUnit.Foot)) * 0.946352946,
                0.0049
            );
        }

        static double First(string text) =>
            double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture);
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

    /// <summary>An end told to the minute before is never before the bound beside it.</summary>
    [Fact]
    public void WhatNoneEndsBeforeIsRoundedDown()
    {
        BottomPlan plan = GluedLaunch.Plan;
        GluePlan glue = plan.Glue! with
        {
            Sessions =
            [
                .. plan.Glue.Sessions.Select(s =>
                    s.Planks > 0 ? s with { NoneEndsBefore = 3.7 } : s
                ),
            ],
        };
        string[] words = Words(GlueSheets.Of(plan, glue));
        Assert.Contains(GlueWords.Hour(3), words);
        Assert.DoesNotContain(GlueWords.Hour(4), words);
    }

    internal static string[] Words(IEnumerable<Drawing> sheets) =>
        [.. sheets.SelectMany(s => s.Shapes.OfType<Lettering>()).Select(l => l.Text)];

    [GeneratedRegex(@"\d ?(mm|m²|m³|kg|g|ml|l|litres?|g/m²|kPa|MPa|C)(\b|$)|a litre|square metre")]
    private static partial Regex Metric();

    [GeneratedRegex(@"\(\d+(\.\d)? (g|ml)\)")]
    private static partial Regex Beside();

    [GeneratedRegex(@"\d ?(US|sq|in|ft|oz|lb|psi|Mpsi|F|gal)\b")]
    private static partial Regex Imperial();
}
