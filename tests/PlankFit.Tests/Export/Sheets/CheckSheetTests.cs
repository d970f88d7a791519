using PlankFit.Export.Checks;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>What the check sheets say, held to numbers worked out by hand for the prism of 20° deadrise, 1 m half-beam, 150 mm at 45°.</summary>
public sealed class CheckSheetTests
{
    private static string[] Texts(Drawing sheet) =>
        [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];

    private static Drawing[] Pages(Prism prism, string kind) =>
        [
            .. CheckBeforeSawing
                .Of(PrismChecks.With(prism))
                .Where(p => p.Title.Contains(kind, StringComparison.Ordinal)),
        ];

    [Fact]
    public void APageAndAViewForEachLayerAndSide()
    {
        string[] titles =
        [
            .. CheckBeforeSawing.Of(PrismChecks.With(new Prism())).Select(p => p.Title),
        ];
        Assert.Equal(8, titles.Length);
        foreach (
            string of in new[]
            {
                "starboard, layer 1",
                "port, layer 1",
                "starboard, layer 2",
                "port, layer 2",
            }
        )
        {
            Assert.Single(
                titles,
                t => t.Contains("Check before sawing, " + of, StringComparison.Ordinal)
            );
            Assert.Single(
                titles,
                t =>
                    t.Contains("The side as it stands upside down, " + of, StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void ReadingsAreThoseOfThePlane()
    {
        string[] texts = Texts(Pages(new Prism(), "Check before sawing")[0]);
        // Layer 1's inner face lies 18 mm inside the table's: its edge at the plumb keel is 18 tan 20 = 6.5514 mm out along the slant, the chine 1064.1778.
        // Seam at 45 degrees: (1064.1778 - 6.5514) sqrt 2 = 1495.7097, on paper 1495.5.
        Assert.Contains("1495.5", texts);
        // The diagonal: along 1057.6264 + 150 sqrt 2 = 1269.7584, across 1057.6264: 1652.5118.
        Assert.Contains("1652.5", texts);
        // The master's after seam: 3100 + 106.0660 at mid-bottom (532.0889 along the slant), at the keel 525.5375 less: 2680.5285, that is 319.4715 forward of 3000.
        Assert.Contains("319.5 fwd", texts);
        // At the chine 532.0889 more: 3738.1549.
        Assert.Contains("738 aft", texts);
        Assert.Contains("S1-20", texts);
        Assert.Contains("station 3", texts);
    }

    [Fact]
    public void FeetInchesAndEighthsSayTheSame()
    {
        string[] texts = Texts(
            Pages(new Prism(Units: LengthUnit.FeetInchesEighths), "Check before sawing")[0]
        );
        // 1495.7097 mm = 58.8862 in = 4 ft 10 in and 28.36 thirty-seconds: 7 eighths.
        Assert.Contains("4'-10 7/8\"", texts);
        // 319.4715 mm = 12.5776 in = 1 ft 0 in and 18.48 thirty-seconds: 18, 4 eighths and a half.
        Assert.Contains("1'-0 9/16\" fwd", texts);
        Assert.Contains(texts, t => t.Contains("LIMIT 1/8\"", StringComparison.Ordinal));
    }

    [Fact]
    public void TheCreepIsThatOfAllPlanksBetween()
    {
        BottomPlan plan = PrismChecks.With(new Prism());
        PlankLayerPlan layer = plan.PlankLayers.First();
        // By pushing every seam: the seam between planks 1 and 2 with stock 0.2 mm over, along the keel.
        double x = PrismChecks.SeamX(new Prism(), layer, 1, 0),
            pushed = PrismChecks.SeamX(new Prism(WidthMm: 150.2), layer, 1, 0);
        Assert.Equal(x - pushed, StockCreepOn(plan, "the foremost seam"), 0.25);
        int last = layer.Starboard.Length - 1;
        x = PrismChecks.SeamX(new Prism(), layer, last, 0);
        pushed = PrismChecks.SeamX(new Prism(WidthMm: 150.2), layer, last, 0);
        Assert.Equal(pushed - x, StockCreepOn(plan, "the aftermost seam"), 0.25);
    }

    /// <summary>The figure of that row under "2 mm on ten planks".</summary>
    private static double StockCreepOn(BottomPlan plan, string row)
    {
        Lettering[] letters = [.. CheckBeforeSawing.Of(plan)[0].Shapes.OfType<Lettering>()];
        Lettering name = letters.Single(l => l.Text.StartsWith(row, StringComparison.Ordinal)),
            head = letters.Single(l => l.Text == "2 mm" && l.At.Y > name.At.Y);
        string figure = letters
            .Single(l => Math.Abs(l.At.X - head.At.X) < 0.1 && Math.Abs(l.At.Y - name.At.Y) < 0.1)
            .Text;
        return double.Parse(
            figure.Replace(" mm", "", StringComparison.Ordinal),
            System.Globalization.CultureInfo.InvariantCulture
        );
    }

    /// <summary>
    /// A hull turned upside down about its own length: one who stands to starboard looks to port with the keel on top. Right of him is look × up; with x aft,
    /// y starboard, z up (before turning) look = -y, up = -z, so right = (-y) × (-z) = x: aft. Hence forward to his left; on the port side to his right.
    /// </summary>
    [Theory]
    [InlineData("starboard", "left", 1)]
    [InlineData("port", "right", -1)]
    public void ForwardLiesWhereOneWhoFacesTheSideSeesIt(string side, string hand, int aft)
    {
        foreach (Drawing page in Pages(new Prism(), "The side as it stands upside down, " + side))
        {
            Assert.Contains(
                Texts(page),
                t => t.Contains($"forward is to your {hand}", StringComparison.Ordinal)
            );
            // Numbers grow aft within each strip, and at one plank keel lies over chine: stations are named on top.
            Lettering[] row =
            [
                .. page.Shapes.OfType<Lettering>().Where(l => l.Text is "10" or "12" or "14"),
            ];
            Assert.Equal(["10", "12", "14"], row.OrderBy(l => aft * l.At.X).Select(l => l.Text));
        }
    }

    /// <summary>A plank heading aft runs, seen on the starboard side upside down (aft to the right), down to the right; on the port side down to the left.</summary>
    [Theory]
    [InlineData("starboard, layer 1", 1)]
    [InlineData("port, layer 1", -1)]
    [InlineData("starboard, layer 2", -1)]
    [InlineData("port, layer 2", 1)]
    public void PlanksLeanAsTheyWillOnTheHull(string of, int lean)
    {
        Drawing page = Pages(new Prism(), "The side as it stands upside down, " + of)[0];
        // The one plank that is grey; where the strips meet it is drawn in both.
        Polyline master = page.Shapes.OfType<Polyline>().First(p => p.Fill == 0.85);
        double top = master.Points.Max(p => p.Y),
            foot = master.Points.Min(p => p.Y),
            keel = master.Points.Where(p => p.Y > top - 0.01).Average(p => p.X),
            chine = master.Points.Where(p => p.Y < foot + 0.01).Average(p => p.X);
        // 45 degrees in a plane drawn square to itself stays 45 degrees.
        Assert.Equal(lean * (top - foot), chine - keel, 0.05);
    }
}
