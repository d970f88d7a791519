using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Comparing;

/// <summary>Lay-outs side by side on paper: the chart, small pictures of those that nothing beats, the list of all.</summary>
public static class CompareSheets
{
    private const string Caution =
        "TO CHOOSE BY, NOT TO SAW FROM. Put what is chosen into the job, lay it, and read what is found before a plank is sawn. VERDICTS ON BENDS ARE ESTIMATES: try the first plank.";

    public static ImmutableArray<Drawing> Of(Comparison c) =>
        SheetPage.Numbered(c.Job, [Chart(c), .. Pictures(c), .. List(c)]);

    private static TitleBlock Block(string of) =>
        new("Lay-outs side by side", of, "no scale", null, Caution) { Arrow = "" };

    private static SheetPage Chart(Comparison c) =>
        new(
            SheetFormat.Bench(c.Job),
            Block("what nothing beats"),
            (pad, box) =>
            {
                Box inside = box.Within(3);
                double top = pad.Paragraph(
                    inside.Left,
                    inside.Top,
                    inside.Width,
                    CompareWords.Head(c),
                    Letters.Bench
                );
                CompareChart.Draw(pad, inside with { Top = top - 2 }, c);
            }
        );

    private static IEnumerable<SheetPage> Pictures(Comparison c)
    {
        Layout[] best =
        [
            .. c.Laid.Where(l =>
                l.Picture is not null && (l.Number == 0 || c.Unbeaten.Contains(l.Number))
            ),
        ];
        if (best.Length == 0)
        {
            yield break;
        }

        Box inside = Frame.Inside(SheetFormat.Bench(c.Job)).Within(4);
        var grid = PictureGrid.Of(
            best.Length,
            inside,
            across =>
            {
                double width = PictureGrid.CellMm(inside, across);
                return (Scale(width) * best.Max(l => l.Picture!.Size.HeightMm))
                    + WordsMm(c, best, width);
            }
        );
        foreach (Layout[] page in best.Chunk(grid.Across * grid.Down))
        {
            yield return new(
                SheetFormat.Bench(c.Job),
                Block("pictures: forward to the left, port above, as the hull lies upside down"),
                (pad, _) =>
                {
                    for (int i = 0; i < page.Length; i++)
                    {
                        Cell(
                            pad,
                            grid.Corner(inside, i),
                            (grid.CellWidthMm, Scale(grid.CellWidthMm)),
                            page[i],
                            c.Job.Units
                        );
                    }
                }
            );
        }
    }

    private static double Scale(double width) => Math.Min(1, width / SmallPicture.WidthMm);

    private static string Named(Layout l) =>
        l.Number == 0 ? "As it stands" : $"{l.Number}: {l.Name}";

    private static double WordsMm(Comparison c, Layout[] best, double width) =>
        best.Max(l =>
            (
                Letters.Wrap(Named(l), Letters.Bench, width, true).Count
                * Letters.Bench
                * Letters.Leading
            )
            + (
                CompareWords
                    .Brief(l, c.Job.Units)
                    .Sum(b => Letters.Wrap(b, Letters.Small, width).Count)
                * Letters.Small
                * Letters.Leading
            )
        ) + 3;

    private static void Cell(
        SheetCanvas pad,
        Vec2 corner,
        (double Width, double Scale) size,
        Layout l,
        LengthUnit unit
    )
    {
        double top = pad.Paragraph(
            corner.X,
            corner.Y,
            size.Width,
            Named(l),
            Letters.Bench,
            bold: true
        );
        SmallPicture picture = l.Picture!;
        double foot = top - (size.Scale * picture.Size.HeightMm);
        pad.Add(picture.At(new(corner.X, foot), size.Scale));
        top = foot - 1.5;
        foreach (string line in CompareWords.Brief(l, unit))
        {
            top = pad.Paragraph(corner.X, top, size.Width, line, Letters.Small);
        }
    }

    private static IReadOnlyList<SheetPage> List(Comparison c)
    {
        ImmutableArray<Measure> columns = CompareWords.Columns(c);
        return new ListSheet(
            Block("the list"),
            [
                CompareWords.Head(c)
                    + " A star: nothing beats it. Refused planks are not to be sawn at all.",
                .. CompareWords.NotLaid(c),
            ],
            [
                new("", 1, false),
                new("lay-out", 5, false),
                .. columns.Select(m => new ListColumn(
                    m.Head,
                    m == Measure.Bend ? 7
                        : m == Measure.Waste ? 4
                        : 3,
                    false
                )),
            ],
            [.. c.Laid.Select(l => CompareWords.Row(c, l, columns))]
        ).Pages(c.Job);
    }
}
