using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Cut sheets as they are read at the saw: nothing on anything else, every number and name there, figures as worked by hand.</summary>
public sealed class CutSheetTests
{
    public static TheoryData<string> Plans => ["rack", "yard", "ply", "by hand"];

    public static TheoryData<string> SomePlans => LongRuns.More ? Plans : ["rack", "by hand"];

    private static BottomPlan Plan(string which) =>
        which switch
        {
            "rack" => NestedPlans.Launch,
            "yard" => NestedPlans.Skiff,
            "ply" => NestedPlans.Ply,
            _ => PrismaticPlan.Build(new()) with { Nest = HandMadePlan.Plan },
        };

    [Theory]
    [MemberData(nameof(SomePlans))]
    public void NothingStandsOnAnythingElse(string which)
    {
        BottomPlan plan = Plan(which);
        None(
            Sheets(plan)
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );
    }

    /// <summary>On the drawing of a board every cut has its number in a ring and in the table, every piece its name in the strip and in the table.</summary>
    [Theory]
    [MemberData(nameof(SomePlans))]
    public void EveryCutAndEveryPieceIsNamed(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in Cuts(plan))
        {
            Drawing sheet = CutSheets.Board(plan, plan.Nest!.Spec, cuts.Board);
            string[] words = [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];
            foreach (SawCut cut in cuts.Cuts)
            {
                Assert.True(words.Count(w => w == NumberText.Trimmed(cut.Number, 0)) >= 2);
            }

            Assert.Equal(cuts.Cuts.Length, Rings(sheet).Count());
            Strip[] strips = [.. Strip.Of(plan, cuts).Where(s => !s.View.IsOverview)];
            foreach (LaidPiece piece in cuts.Board.Pieces)
            {
                string id = piece.Piece.Id.ToString();
                Assert.Single(strips.SelectMany(s => s.Words), w => w.Text == id);
                Assert.True(words.Count(w => w == id) >= 2, id);
            }

            Assert.Equal(
                cuts.Board.Pieces.Count(p => p.FaceDown),
                strips.SelectMany(s => s.Words).Count(w => w.Text == "outer face away")
            );
        }
    }

    /// <summary>A name is on its own piece, or on none.</summary>
    [Theory]
    [MemberData(nameof(SomePlans))]
    public void NoNameStandsOnAnotherPiece(string which)
    {
        BottomPlan plan = Plan(which);
        int named = 0;
        foreach (BoardCutList cuts in Cuts(plan))
        {
            foreach (Strip strip in Strip.Of(plan, cuts))
            {
                foreach (Lettering name in strip.Names)
                {
                    named++;
                    Assert.Empty(strip.Under(name));
                }
            }
        }

        Assert.True(named >= plan.Nest!.Boards.Sum(b => b.Pieces.Length));
    }

    /// <summary>Each number and name is there in every strip of its own, and leads to its cut or stands on no other piece.</summary>
    [Theory]
    [MemberData(nameof(SomePlans))]
    public void EveryNumberLeadsToItsCut(string which)
    {
        BottomPlan plan = Plan(which);
        None(plan.Nest!.Boards.SelectMany(b => StripTold.Faults(plan, b)));
    }

    /// <summary>Sheets of many lanes are shown whole, with their rips, and then a few lanes at a time: each lane once, so wide that its names can be read.</summary>
    [Fact]
    public void LanesOfASheetAreShownLarge()
    {
        const double LeastLaneMm = 9;
        BottomPlan plan = Plan("ply");
        BoardCutList[] many = [.. Cuts(plan).Where(c => c.Lanes.Length > 4)];
        Assert.Contains(many, c => c.Frame.Stock.GrainAcross);
        Assert.Contains(many, c => !c.Frame.Stock.GrainAcross);
        foreach (BoardCutList cuts in many)
        {
            Strip[] strips = [.. Strip.Of(plan, cuts)];
            Assert.True(strips[0].View.IsWhole && strips[0].View.IsOverview);
            Assert.All(
                strips[0].View.Cuts,
                c => Assert.True(c.Kind is CutKind.Rip or CutKind.EndOff)
            );
            Assert.Equal(cuts.Lanes, strips.Skip(1).SelectMany(s => s.View.Lanes));
            foreach (Strip strip in strips.Skip(1))
            {
                Assert.Equal(
                    strip
                        .View.Lanes.SelectMany(l => l.PieceIds)
                        .Select(id => id.ToString())
                        .Order(StringComparer.Ordinal),
                    strip
                        .View.Places.Select(p => p.PieceId.ToString())
                        .Order(StringComparer.Ordinal)
                );
                Assert.InRange(strip.Box.Height / strip.View.Lanes.Count(), LeastLaneMm, 25);
                Assert.All(
                    strip.Wood,
                    w => Assert.All(w.Value.Points, p => Assert.True(strip.Box.Holds(p)))
                );
            }
        }
    }

    /// <summary>Every strip says its scale, to a tenth.</summary>
    [Theory]
    [MemberData(nameof(SomePlans))]
    public void EveryStripIsDrawnToTheScaleThatItNames(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in Cuts(plan))
        {
            Drawing sheet = CutSheets.Board(plan, plan.Nest!.Spec, cuts.Board);
            double[] told =
            [
                .. Regex
                    .Matches(Words(sheet), @"drawn 1:(\d+(\.\d)?)")
                    .Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)),
            ];
            double[] drawn = [.. Strip.Of(plan, cuts).Select(s => 1 / s.Factor)];
            Assert.Equal(drawn.Length, told.Length);
            Assert.All(drawn.Zip(told), p => Assert.Equal(p.First, p.Second, 0.06));
        }
    }

    /// <summary>In a sheet whose grain runs across nothing is measured from the marked end along it, and the sheet says so.</summary>
    [Fact]
    public void ATurnedSheetSaysFromWhereItIsMeasured()
    {
        BottomPlan plan = Plan("by hand");
        string words = Words(
            CutSheets.Board(
                plan,
                plan.Nest!.Spec,
                plan.Nest!.Boards.Single(b => b.Stock.GrainAcross)
            )
        );
        Assert.Contains(
            "lengths are from the edge that is not marked",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("marked edge at the right", words, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(SomePlans))]
    public void EverySheetHasTheCaution(string which)
    {
        foreach (Drawing sheet in Sheets(Plan(which)))
        {
            foreach (
                string asked in new[]
                {
                    "both sides of every cut",
                    "eyes, ears",
                    "dust",
                    "saw maker's instructions",
                }
            )
            {
                Assert.Contains(asked, Words(sheet), StringComparison.Ordinal);
            }
        }
    }

    private static IEnumerable<BoardCutList> Cuts(BottomPlan plan) =>
        plan.Nest!.Boards.Select(b => BoardCuts.Of(b, plan.Nest.Spec));

    private static IEnumerable<Drawing> Sheets(BottomPlan plan) =>
        CutSheets
            .Of(plan, plan.Nest!)
            .Concat(plan.Nest!.Boards.Select(b => CutSheets.Board(plan, plan.Nest!.Spec, b)));

    private static string Words(Drawing sheet) =>
        string.Join(' ', sheet.Shapes.OfType<Lettering>().Select(l => l.Text));

    private static IEnumerable<CircleShape> Rings(Drawing sheet) =>
        sheet.Shapes.OfType<CircleShape>().Where(c => c.Fill == 1);

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(40)));
    }
}
