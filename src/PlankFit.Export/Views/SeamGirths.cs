using PlankFit.Export.Sheets;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Views;

/// <summary>A column a station: the girth from the keel's edge at which each seam crosses it, and the whole girth to the chine.</summary>
internal sealed class SeamGirths
{
    private const double GapMm = 6;

    private readonly (string Head, List<(string Seam, string Girth)> Rows)[] columns;
    private readonly string title;
    private readonly double letters;
    private readonly double columnMm;
    private readonly double stepMm;
    private readonly int across;

    private SeamGirths(
        (string Head, List<(string Seam, string Girth)> Rows)[] columns,
        Panel panel,
        string unit,
        double widthMm,
        double letters
    )
    {
        this.columns = columns;
        this.letters = letters;
        title =
            $"Where the seams cross the stations, girth from the layer's edge at the {panel.WordOf(PanelEdge.Lower)}, {unit}";
        double names = columns.Max(c => c.Rows.Max(r => Letters.Width(r.Seam, SmallMm))),
            figures = columns.Max(c => c.Rows.Max(r => Letters.Width(r.Girth, letters))),
            heads = columns.Max(c => Letters.Width(c.Head, letters, true));
        columnMm = Math.Max(names + 2 + figures, heads);
        across = Math.Clamp((int)((widthMm + GapMm) / (columnMm + GapMm)), 1, columns.Length);
        stepMm = across == 1 ? widthMm : (widthMm - columnMm) / (across - 1);
    }

    public double HeightMm =>
        Letters.Heading + 4 + columns.Chunk(across).Sum(BlockMm) + (GapMm * (Blocks - 1));

    private int Blocks => (columns.Length + across - 1) / across;
    private double SmallMm => 0.72 * letters;
    private double RowMm => letters * Letters.Leading;

    /// <summary>In the largest lettering that fits the height; null where none does or no station is crossed.</summary>
    public static SeamGirths? Fitting(
        ExpandedLayer expanded,
        LengthUnit unit,
        double widthMm,
        double heightMm
    )
    {
        (string Head, List<(string Seam, string Girth)> Rows)[] columns =
        [
            .. expanded.Stations.Select(s =>
                ($"station {Letters.Shortened(s.Name, Letters.Bench, 20)}", Rows(expanded, s, unit))
            ),
        ];
        return columns.Length == 0
            ? null
            : new[] { Letters.Heading, 3, Letters.Bench }
                .Select(h => new SeamGirths(
                    columns,
                    expanded.Panel,
                    SheetWords.Unit(unit),
                    widthMm,
                    h
                ))
                .FirstOrDefault(t => t.HeightMm <= heightMm);
    }

    public void Draw(SheetCanvas pad, double left, double top)
    {
        pad.Text(left, top - Letters.Bench, title, Letters.Bench, bold: true);
        top -= Letters.Heading + 4;
        foreach (
            (string Head, List<(string Seam, string Girth)> Rows)[] block in columns.Chunk(across)
        )
        {
            for (int i = 0; i < block.Length; i++)
            {
                Column(pad, left + (i * stepMm), top, block[i]);
            }

            top -= BlockMm(block) + GapMm;
        }
    }

    private double BlockMm((string Head, List<(string Seam, string Girth)> Rows)[] block) =>
        letters + 4 + (RowMm * block.Max(c => c.Rows.Count));

    private void Column(
        SheetCanvas pad,
        double left,
        double top,
        (string Head, List<(string Seam, string Girth)> Rows) column
    )
    {
        double y = top - letters;
        pad.Text(left, y, column.Head, letters, bold: true);
        pad.Line(left, y - 1.8, left + columnMm, y - 1.8, Pens.Rule);
        y -= letters + 3.5;
        foreach ((string seam, string girth) in column.Rows)
        {
            pad.Text(left, y, seam, SmallMm);
            pad.Text(left + columnMm, y, girth, letters, Anchor.BaselineRight);
            y -= RowMm;
        }
    }

    private static List<(string Seam, string Girth)> Rows(
        ExpandedLayer expanded,
        ExpandedStation station,
        LengthUnit unit
    )
    {
        List<(string Seam, double Girth)> found = [];
        foreach ((Plank plank, _) in expanded.Planks)
        {
            if (expanded.GirthWhere(plank.OnHull.AfterEdge, station) is { } girth)
            {
                found.Add(($"{plank.Id.Short} | {PlankId.ShortOf(plank.Number + 1)}", girth));
            }
        }

        return
        [
            .. found
                .OrderBy(f => f.Girth)
                .Append((expanded.Panel.WordOf(PanelEdge.Upper), station.GirthMm))
                .Select(f => (f.Item1, LengthText.PaperNumber(f.Item2, unit))),
        ];
    }
}
