using System.Collections.Immutable;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Tiling;
using PlankFit.Geometry.Primitives;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace PlankFit.Tests.Export;

public class TilerTests
{
    private const double MmPerPoint = 25.4 / 72;

    public static TheoryData<Paper, bool> Papers =>
        new()
        {
            { Paper.A4, false },
            { Paper.A4, true },
            { Paper.A3, true },
            { Paper.Letter, true },
        };

    /// <summary>A plank across the sheet on the skew, with a seam, marks and lettering.</summary>
    private static Drawing Plank { get; } =
        SampleDrawings.Of(
            1700,
            420,
            new Polyline("cut", Pen.Medium, Skew(0, 150), true, 0.95),
            new Polyline("net", Pen.Dashed, Skew(10, 130), true),
            new CircleShape("marks", Pen.Thin, new(190, 110), 12),
            new Lettering(
                "text",
                Pen.Thin,
                new(850, 210),
                "S1-07 outer face",
                8,
                Anchor.MiddleCentre
            )
        );

    [Theory]
    [MemberData(nameof(Papers))]
    public void EveryPointOfEveryLineIsOnAPageInItsPlace(Paper paper, bool inches)
    {
        var options = new TilingOptions(paper, Inches: inches);
        var grid = TileGrid.Of(Plank, options);
        ImmutableArray<Drawing> pages = Tiler.Pages(Plank, options);
        Assert.Equal(grid.Tiles.Length, pages.Length);
        var cut = (Polyline)Plank.Shapes[0];
        for (int i = 0; i < cut.Points.Length; i++)
        {
            (Vec2 from, Vec2 to) = (cut.Points[i], cut.Points[(i + 1) % cut.Points.Length]);
            for (double part = 0.0; part < 1; part += 0.01)
            {
                Vec2 point = from + (part * (to - from));
                Assert.Contains(
                    grid.Tiles.Zip(pages),
                    p =>
                        p.First.Window.Holds(point)
                        && On(p.Second, point - p.First.Window.Least + new Vec2(10, 30))
                );
            }
        }

        static bool On(Drawing page, Vec2 point) =>
            page
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == "cut" && l.Pen.WidthMm > 0)
                .Any(l =>
                    l.Points.Zip(l.Points.Skip(1)).Any(s => Off(point, s.First, s.Second) < 1e-9)
                );
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void CrossesOfNeighboursAreAtTheSamePlaceOfTheDrawing(Paper paper, bool inches)
    {
        var grid = TileGrid.Of(Plank, new TilingOptions(paper, Inches: inches));
        var crosses = grid.Tiles.ToDictionary(t => t.Code, t => Crosses(grid, t));
        int seams = 0;
        foreach (Tile tile in grid.Tiles)
        {
            foreach (Tile other in grid.Tiles)
            {
                if (Math.Abs(tile.Row - other.Row) + Math.Abs(tile.Column - other.Column) == 1)
                {
                    seams++;
                    var shared = crosses[tile.Code].Intersect(crosses[other.Code]).ToList();
                    Assert.Equal(2, shared.Count);
                    Assert.All(
                        shared,
                        c => Assert.True(tile.Window.Holds(c) && other.Window.Holds(c))
                    );
                    IEnumerable<string> codes = SeamCrosses
                        .Of(grid, tile)
                        .OfType<Lettering>()
                        .Select(t => t.Text);
                    Assert.Contains(other.Code, codes);
                }
            }
        }

        Assert.True(seams > 0);

        static List<Vec2> Crosses(TileGrid grid, Tile tile) =>
            [.. SeamCrosses.Of(grid, tile).OfType<CircleShape>().Select(c => c.Centre)];
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void CheckSquaresAreMeasuredBackFromTheFile(Paper paper, bool inches)
    {
        ImmutableArray<Drawing> pages = Tiler.Pages(
            Plank,
            new TilingOptions(paper, Inches: inches)
        );
        Drawing long1 = Tiler.LongPage(Plank, new TilingOptions(paper, Inches: inches));
        var file = new MemoryStream();
        PdfWriter.Write(file, [.. pages, long1], "Tiles", TestContext.Current.CancellationToken);
        using var pdf = PdfDocument.Open(file.ToArray());
        foreach (Page page in pdf.GetPages())
        {
            var sizes = page
                .Paths.Select(p => p.GetBoundingRectangle()!.Value)
                .Select(b => (Width: b.Width * MmPerPoint, Height: b.Height * MmPerPoint))
                .ToList();
            Assert.Contains(sizes, s => IsSquare(s, 100));
            Assert.Equal(inches, sizes.Exists(s => IsSquare(s, 101.6)));
        }

        static bool IsSquare((double Width, double Height) size, double side) =>
            Math.Abs(size.Width - side) < 0.02 && Math.Abs(size.Height - side) < 0.02;
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void ChecksOfAPageLieOnItsFrameAndNeverInTheDrawing(Paper paper, bool inches)
    {
        foreach (Drawing page in Tiler.Pages(Plank, new TilingOptions(paper, Inches: inches)))
        {
            var squares = page
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == CheckSquares.Layer)
                .ToList();
            Assert.Equal(inches ? 2 : 1, squares.Count);
            var frame = new Window(
                new(10 - 1e-9, 30 - 1e-9),
                new(page.WidthMm - 10 + 1e-9, page.HeightMm - 10 + 1e-9)
            );
            Assert.All(
                squares.SelectMany(s => s.Points),
                p =>
                    Assert.True(
                        frame.Holds(p)
                            && (
                                Math.Min(
                                    Math.Min(p.X - frame.Least.X, frame.Most.X - p.X),
                                    Math.Min(p.Y - frame.Least.Y, frame.Most.Y - p.Y)
                                ) < 1e-8
                            ),
                        "a check lies in the drawing"
                    )
            );
            Assert.All(
                page.Shapes.OfType<Lettering>().Where(t => t.Layer == CheckSquares.Layer),
                t =>
                    Assert.False(
                        frame.Holds(t.LeftEnd() + (0.5 * t.HeightMm * t.Along().Left())),
                        "its words stand in the drawing"
                    )
            );
        }
    }

    /// <summary>Where a drawing fills its page the squares stand below it, and nothing of it is crossed; where it leaves room the page grows by nothing.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ALongPagesSquaresCrossNothing(bool inches)
    {
        Drawing full = SampleDrawings.Of(
            900,
            400,
            [
                .. Enumerable
                    .Range(0, 30)
                    .Select(i => new Lettering(
                        "text",
                        Pen.Thin,
                        new(5, 8 + (13 * i)),
                        string.Concat(Enumerable.Repeat("words across the sheet, ", 10)),
                        6.5
                    )),
            ]
        );
        Drawing page = Tiler.LongPage(full, new TilingOptions(Paper.A4, Inches: inches));
        Assert.Equal(440 + CheckSquares.BandMm, page.HeightMm, 1e-9);
        double foot = page
            .Shapes.OfType<Lettering>()
            .Where(t => t.Layer == "text")
            .Min(t => t.LeftEnd().Y);
        Assert.All(
            page.Shapes.OfType<Polyline>().Where(l => l.Layer == CheckSquares.Layer),
            s => Assert.All(s.Points, p => Assert.True(p.Y < foot - 5))
        );
    }

    [Fact]
    public void NoTitleIsCutShort()
    {
        string title =
            "A builder's own long name of a hull that has a name, revision 0a1b2c: PT1-38, port, layer T1 a layer with a name, outer face up, full size";
        foreach (Paper paper in Enum.GetValues<Paper>())
        {
            foreach (
                Drawing page in Tiler
                    .Pages(Plank with { Title = title }, new TilingOptions(paper))
                    .Append(
                        Tiler.LongPage(
                            SampleDrawings.Of(150, 150, Plank.Shapes[2]) with
                            {
                                Title = title,
                            },
                            new TilingOptions(paper)
                        )
                    )
            )
            {
                string words = string.Join(
                    ' ',
                    page.Shapes.OfType<Lettering>()
                        .Where(t => t.Layer == "page")
                        .Select(t => t.Text)
                );
                Assert.Contains(title, words, StringComparison.Ordinal);
                Assert.DoesNotContain("…", words, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void TheWayRoundWithFewerPagesIsTakenAndEmptyPagesAreLeftOut()
    {
        Drawing wide = SampleDrawings.Of(
            270,
            160,
            new Polyline("cut", Pen.Thin, SampleDrawings.Square(5, 5, 150), true)
        );
        var grid = TileGrid.Of(wide, new TilingOptions(Paper.A4));
        Assert.Equal((297, 210), (grid.PageWidthMm, grid.PageHeightMm));
        Assert.Single(grid.Tiles);

        Drawing corners = SampleDrawings.Of(
            1000,
            1000,
            new Polyline("cut", Pen.Thin, SampleDrawings.Square(5, 5, 50), true),
            new Polyline("cut", Pen.Thin, SampleDrawings.Square(945, 945, 50), true)
        );
        var few = TileGrid.Of(corners, new TilingOptions(Paper.A4));
        Assert.Equal(2, few.Tiles.Length);
        Assert.True(few.Rows * few.Columns > 10);
    }

    [Fact]
    public void LetteringIsWholeOnAPageAndNeverLost()
    {
        ImmutableArray<Drawing> pages = Tiler.Pages(Plank, new TilingOptions(Paper.A4));
        int shown = pages
            .SelectMany(p => p.Shapes)
            .OfType<Lettering>()
            .Count(t => t.Text == "S1-07 outer face");
        Assert.InRange(shown, 1, 4);
    }

    [Fact]
    public void TheLongPageIsTheDrawingAndItsMargins()
    {
        Drawing page = Tiler.LongPage(Plank, new TilingOptions(Paper.A4));
        Assert.Equal(1720, page.WidthMm, 1e-9);
        Assert.Equal(460, page.HeightMm, 1e-9);
        Polyline cut = page.Shapes.OfType<Polyline>().Single(l => l.Layer == "cut");
        Vec2 moved = cut.Points[0] - ((Polyline)Plank.Shapes[0]).Points[0];
        Assert.Equal(new Vec2(10, 30), moved);
    }

    [Fact]
    public void TheSmallestDrawingStillGetsBothCheckSquares()
    {
        Drawing tiny = SampleDrawings.Of(
            20,
            10,
            new Polyline("cut", Pen.Thin, SampleDrawings.Square(1, 1, 5), true)
        );
        foreach (Paper paper in Enum.GetValues<Paper>())
        {
            var options = new TilingOptions(paper, Inches: true);
            Drawing page = Assert.Single(Tiler.Pages(tiny, options));
            Assert.Equal(2, Squares(page));
            Assert.Equal(2, Squares(Tiler.LongPage(tiny, options)));
        }

        static int Squares(Drawing page) =>
            page.Shapes.OfType<Polyline>().Count(l => l.Layer == CheckSquares.Layer);
    }

    [Theory]
    [InlineData(0, 0, "A1")]
    [InlineData(1, 2, "B3")]
    [InlineData(26, 9, "AA10")]
    public void PagesAreNamedByRowAndColumn(int row, int column, string code) =>
        Assert.Equal(code, new Tile(row, column, default).Code);

    private static System.Collections.Immutable.ImmutableArray<Vec2> Skew(
        double inset,
        double width
    )
    {
        Vec2 along = new Vec2(1660, 240).Unit();
        Vec2 start = new Vec2(40, 20) + (inset * (along + along.Left()));
        double length = 1640 - (2 * inset);
        return
        [
            start,
            start + (length * along),
            start + (length * along) + (width * along.Left()),
            start + (width * along.Left()),
        ];
    }

    private static double Off(Vec2 point, Vec2 from, Vec2 to)
    {
        Vec2 along = to - from;
        double part = Math.Clamp((point - from).Dot(along) / along.Dot(along), 0, 1);
        return point.ChordTo(from + (part * along));
    }
}
