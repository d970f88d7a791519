using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Panels;

/// <summary>
/// The figures by which the flat panel is set out on a floor or a sheet: from the base line, which is the chord of the keel's flat line,
/// the places of keel and chine at every station, and the girth.
/// </summary>
internal static class PanelTable
{
    private static string[] HeadsOf(Panel panel) =>
        [
            "station",
            $"{panel.WordOf(PanelEdge.Lower)}: along",
            "off",
            $"{panel.WordOf(PanelEdge.Upper)}: along",
            "off",
            "girth on the hull",
        ];

    private const double RowMm = 1.75 * Letters.Bench;

    /// <summary>Height that the table takes.</summary>
    public static double Height(PanelPlan plan) => (plan.Stations.Length + 1.5) * RowMm;

    /// <summary>Drawn with its upper left corner at the point given; figures in the job's unit.</summary>
    public static void Draw(
        SheetCanvas pad,
        PanelPlan plan,
        LengthUnit unit,
        double left,
        double top,
        double width
    )
    {
        FlatPanel flat = plan.Flat;
        string[] heads = HeadsOf(plan.Panel);
        double column = width / heads.Length,
            y = top - Letters.Bench;
        for (int c = 0; c < heads.Length; c++)
        {
            Put(c, Letters.Shortened(heads[c], Letters.Bench, column - 2), y, c > 0);
        }

        pad.Line(left, y - 1.4, left + width, y - 1.4, Pens.Rule);
        y -= 0.5 * RowMm;
        foreach (StationOnHull station in plan.Stations)
        {
            y -= RowMm;
            Vec2 keel = flat.Map.At(station.U, flat.Patch.Lower(station.U)),
                chine = flat.Map.At(station.U, flat.Patch.Upper(station.U));
            string[] row =
            [
                Letters.Shortened(station.Name, Letters.Bench, column - 2),
                Figure(keel.X),
                Figure(keel.Y),
                Figure(chine.X),
                Figure(chine.Y),
                Figure(Girth(flat.Patch, station.U)),
            ];
            for (int c = 0; c < row.Length; c++)
            {
                Put(c, row[c], y, false);
            }
        }

        void Put(int c, string text, double at, bool head) =>
            pad.Text(
                c == 0 ? left : left + ((c + 1) * column) - 2,
                at,
                text,
                Letters.Bench,
                c == 0 ? Anchor.BaselineLeft : Anchor.BaselineRight,
                head || c == 0
            );

        string Figure(double mm) => LengthText.PaperNumber(mm, unit);
    }

    /// <summary>Length of the section on the hull, keel to chine, by Gauss's three points on twelve steps.</summary>
    public static double Girth(SurfacePatch patch, double u)
    {
        double[] at = [0.5 - Math.Sqrt(0.15), 0.5, 0.5 + Math.Sqrt(0.15)],
            share = [5.0 / 18, 8.0 / 18, 5.0 / 18];
        double width = patch.Upper(u) - patch.Lower(u),
            sum = 0;
        for (int k = 0; k < 12; k++)
        {
            for (int g = 0; g < 3; g++)
            {
                sum += share[g] * width / 12 * patch.At(u, (k + at[g]) / 12).Dv.Norm;
            }
        }

        return sum;
    }
}
