using PlankFit.Export.AsBuilt;
using PlankFit.Export.Fastenings;
using PlankFit.Export.SettingUp;
using PlankFit.Export.Sheets;
using PlankFit.Export.Stock;
using PlankFit.Export.Views;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>What a builder stumbles over on a sheet: words broken or doubled, lists that say the same line by line, signs that blacken the paper.</summary>
public sealed class SmallThingsOfPaperTests
{
    private static readonly BottomPlan Launch = DemoPlans.Of("survey-launch");

    [Theory]
    [InlineData("western-redcedar", 20, "western-|redcedar")]
    [InlineData("douglas-fir/clear", 22, "douglas-fir/|clear")]
    [InlineData("redcedar", 10, "redce|dar")]
    public void ALongWordIsBrokenAfterAHyphenWhereItHasOne(string word, double mm, string lines) =>
        Assert.Equal(lines.Split('|'), Letters.Wrap(word, Letters.Bench, mm));

    [Fact]
    public void NoWordStandsTwiceBeforeAStringersName()
    {
        string[] words = Words(SettingUpPages.Of(Launch.Job, Launch.SettingUp!));
        Assert.Contains(words, w => w.Contains("stringer A", StringComparison.Ordinal));
        Assert.DoesNotContain(
            words,
            w => w.Contains("stringer stringer", StringComparison.OrdinalIgnoreCase)
        );
    }

    [Fact]
    public void PullDownPointsAreGreyDotsAndNeverBlack()
    {
        Drawing plan = FasteningPlanView.Of(
            Launch,
            Launch.Fastenings!,
            Launch.PlankLayers.Single(l => l.Number == 2)
        );
        Shape[] points = [.. plan.Shapes.Where(s => s.Layer == "fasten-pull-down")];
        Assert.True(points.Length > 2000);
        Assert.All(
            points,
            s => Assert.InRange(Assert.IsType<CircleShape>(s).Fill!.Value, 0.3, 0.7)
        );
    }

    /// <summary>However near two ends of planks stand, as at a transom: a builder counts by these numbers.</summary>
    [Fact]
    public void EveryPlankHasItsNumberOnTheFasteningPlan()
    {
        foreach (PlankLayerPlan layer in Launch.PlankLayers)
        {
            string[] words = [.. Words([FasteningPlanView.Of(Launch, Launch.Fastenings!, layer)])];
            Assert.All(layer.Starboard, p => Assert.Equal(2, words.Count(w => w == p.Id.Short)));
        }
    }

    /// <summary>At every spacing a sign leaves room to the next one, as far as a sign may shrink and be read.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(25)]
    [InlineData(40)]
    [InlineData(200)]
    public void SignsOfFasteningsStandApart(double spacingMm)
    {
        FasteningPlan fastenings = Launch.Fastenings! with
        {
            Layers =
            [
                .. Launch.Fastenings!.Layers.Select(l =>
                    l with
                    {
                        Rule = l.Rule with { Spacing = l.Rule.Spacing with { MostMm = spacingMm } },
                    }
                ),
            ],
        };
        Drawing plan = FasteningPlanView.Of(Launch, fastenings, Launch.PlankLayers.First());
        string scale = Words([plan])
            .Single(w => w.StartsWith("scale 1:", StringComparison.Ordinal));
        double apart =
            spacingMm
            / double.Parse(
                scale["scale 1:".Length..],
                System.Globalization.CultureInfo.InvariantCulture
            );
        Polyline[] signs =
        [
            .. plan
                .Shapes.OfType<Polyline>()
                .Where(p => p.Layer.StartsWith("fasten-", StringComparison.Ordinal)),
        ];
        Assert.NotEmpty(signs);
        // One of them is the key's, which is larger.
        double[] wide =
        [
            .. signs
                .Select(s => s.Points.Max(p => p.X) - s.Points.Min(p => p.X))
                .Order()
                .SkipLast(1),
        ];
        Assert.All(wide, w => Assert.InRange(w, 0.74, Math.Max(0.76, 0.67 * apart)));
    }

    /// <summary>What is bought is what the layers take, and what the bill of materials has: not spare reckoned once more and rounded otherwise.</summary>
    [Fact]
    public void SpareIsRoundedOnce()
    {
        FasteningPlan usual = Launch.Fastenings!;
        FasteningTotal five = usual.Totals[0] with { Count = 5, WithSpare = 6 };
        FasteningPlan fastenings = usual with
        {
            Totals =
            [
                five,
                five with
                {
                    Side = five.Side == Side.Port ? Side.Starboard : Side.Port,
                },
            ],
        };
        Drawing bought = FasteningShopping.Of(Launch, fastenings)[0];
        Assert.Contains("12", Words([bought]));
        Assert.DoesNotContain("11", Words([bought]));
    }

    /// <summary>Only the sheet that has blanks asks for them to be filled in.</summary>
    [Fact]
    public void SheetsWithoutBlanksDoNotSpeakOfThem()
    {
        BottomPlan standing = DemoPlans.Of("tender-as-she-stands");
        string[] words =
        [
            .. Words([
                .. Launch.PlankLayers.Select(l => ShellExpansion.Of(Launch, l)),
                .. AsBuiltPages.Of(standing, standing.AsBuiltOfAll!),
            ]),
        ];
        Assert.DoesNotContain(words, w => w.Contains("blank", StringComparison.Ordinal));
    }

    [Fact]
    public void ALabelSaysHowLongAndWideItsPieceIs()
    {
        BottomPlan plan = NestedPlans.Launch;
        string[] words = Words(LabelPages.Of(plan, plan.Nest!));
        SawPiece piece = plan.Nest!.Boards[0].Pieces[0].Piece;
        string length = LengthText.PaperNumber(
            piece.Outline.Max(p => p.X) - piece.Outline.Min(p => p.X),
            plan.Job.Units,
            RoundTo.Up
        );
        Assert.Contains(words, w => w.StartsWith($"{length} × ", StringComparison.Ordinal));
        Assert.DoesNotContain(words, w => w.EndsWith("...", StringComparison.Ordinal));
    }

    /// <summary>A line a kind of board with how many there are, however many: together all boards, each by its name.</summary>
    [Fact]
    public void BoardsToFetchAreOneLineAKind()
    {
        BottomPlan plan = NestedPlans.WholeLaunchWhereAsked;
        NestPlan nest = plan.Nest!;
        string words = string.Join(' ', Words(ShoppingPages.Of(plan, nest)));
        Assert.All(nest.Boards, b => Assert.Contains(b.Id, words, StringComparison.Ordinal));
        int kinds = nest
            .Boards.Select(b =>
                (b.Stock.LengthMm, b.Stock.WidthMm, b.Stock.Species, b.Stock.Grade, b.Stock.OnHand)
            )
            .Distinct()
            .Count();
        string[] shares = [.. words.Split(' ').Where(w => w == "%")];
        Assert.True(shares.Length <= kinds + 10, $"{shares.Length} lines for {kinds} kinds");
    }

    /// <summary>A list that runs over by a row or two is set a little tighter, and has no page for them alone.</summary>
    [Fact]
    public void NoPageIsTurnedForARowOrTwo()
    {
        ListSheet Of(int rows) =>
            new(
                new("List", "of rows", "no drawing", null, ""),
                [],
                [new("row", 1)],
                [
                    .. Enumerable
                        .Range(1, rows)
                        .Select(i => System.Collections.Immutable.ImmutableArray.Create($"{i}")),
                ]
            );
        int[] pages = [.. Enumerable.Range(1, 80).Select(n => Of(n).Pages(Launch.Job).Count)];
        int two = Array.IndexOf(pages, 2) + 1;
        for (int n = two; n < 80; n++)
        {
            Drawing last = SheetPage.Numbered(Launch.Job, Of(n).Pages(Launch.Job))[^1];
            int rows = Words([last]).Count(w => w == $"{n}" || w == $"{n - 1}" || w == $"{n - 2}");
            Assert.True(pages[n - 1] == 1 || rows == 3, $"{n} rows end with a page of {rows}");
        }
    }

    [Fact]
    public void AJobsLongNameIsWholeInItsTitleBlock()
    {
        const string Name = "The survey launch of the harbour office";
        Drawing sheet = BottomPlanView.Of(
            Launch with
            {
                Job = Launch.Job with { Name = Name, Output = new(default, PaperSize.Letter) },
            },
            Launch.PlankLayers.First()
        );
        Drawing small = PlankFit.Export.Checks.CheckBeforeSawing.Of(
            Launch with
            {
                Job = Launch.Job with { Name = Name },
            }
        )[0];
        Assert.Contains(Name, string.Join(' ', Words([small])), StringComparison.Ordinal);
        Assert.Contains(Name, string.Join(' ', Words([sheet])), StringComparison.Ordinal);
    }

    private static string[] Words(IEnumerable<Drawing> sheets) =>
        [.. sheets.SelectMany(s => s.Shapes).OfType<Lettering>().Select(t => t.Text)];
}
