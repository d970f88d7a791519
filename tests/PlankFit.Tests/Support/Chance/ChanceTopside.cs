using System.Globalization;
using System.Text;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Support.Chance;

/// <summary>A hull by chance with its topsides to plank: job and table as text, by a seed alone.</summary>
internal static class ChanceTopside
{
    /// <summary>Job and table of offsets.</summary>
    /// <param name="names">What the panel and its two lines are called.</param>
    public static (string Job, string Offsets) Of(
        int seed,
        (string Panel, string Chine, string Sheer)? names = null
    )
    {
        (string panel, string chine, string sheer) = names ?? ("topside", "chine", "sheer");
        var draw = new Draw(seed);
        var hull = new ChanceHull(draw);
        double freeboard = hull.BeamMm * draw.Between(0.45, 0.8),
            flare = hull.BeamMm * draw.Between(-0.05, 0.16),
            sweep = hull.BeamMm * draw.Between(0, 0.3);
        bool round = draw.Heads(0.3);
        double Forward(double x) => 1 - (x / hull.LengthMm);
        (double Y, double Z) Sheer(double x) =>
            (
                hull.ChineY(x) + (flare * (0.3 + Forward(x))),
                hull.ChineZ(x) + freeboard + (sweep * Forward(x) * Forward(x))
            );
        var table = new StringBuilder(
            hull.Table.Replace("\nchine,", $"\n\"{chine}\",", StringComparison.Ordinal)
        );
        void Row(string line, string measure, Func<double, double> value) =>
            table
                .Append(CultureInfo.InvariantCulture, $"\"{line}\",{measure}")
                .Append(
                    string.Concat(
                        hull.StationsMm.Select(x => "," + draw.Cell(Math.Max(0, value(x))))
                    )
                )
                .Append('\n');
        if (round)
        {
            Row("rubber", "height", x => (hull.ChineZ(x) + Sheer(x).Z) / 2);
            Row(
                "rubber",
                "half-breadth",
                x => ((hull.ChineY(x) + Sheer(x).Y) / 2) + (0.02 * freeboard)
            );
        }

        Row(sheer, "height", x => Sheer(x).Z);
        Row(sheer, "half-breadth", x => Sheer(x).Y);
        var job = new StringBuilder();
        void Line(string text) => job.Append(text).Append('\n');
        Line($"[job]\nname = \"Topsides {seed}\"\nunits = \"{LengthUnits.Name(draw.Unit)}\"");
        Line("[hull]\noffsets = \"offsets.csv\"\nkeel = \"keel edge\"");
        Line($"chine = \"{chine}\"");
        Line($"offsets-are-to = \"{draw.OneOf("outside", "inside")}\"");
        Line(hull.Round ? "between = [\"bilge\"]" : "");
        Line($"[[panel]]\nname = \"{panel}\"\nlower = \"{chine}\"\nupper = \"{sheer}\"");
        Line(round ? "between = [\"rubber\"]" : "");
        double width = Math.Min(draw.Between(60, 160), freeboard / 2.5);
        Line($"[[layer]]\nname = \"skin\"\nthickness = {draw.Value(8)}");
        Line($"width = {draw.Value(hull.BeamMm / 4)}\nangle = 45\nheads = \"aft\"");
        int skins = draw.Whole(1, 2);
        bool aft = draw.Heads();
        string angle = draw.Between(40, 70).ToString("0.#", CultureInfo.InvariantCulture);
        for (int i = 0; i < skins; i++)
        {
            Line($"[[layer]]\npanel = \"{panel}\"\nname = \"side {i}\"");
            Line($"thickness = {draw.Value(draw.Between(3, 8))}\nwidth = {draw.Value(width)}");
            Line($"angle = {angle}\nheads = \"{(i % 2 == 0 == aft ? "aft" : "forward")}\"");
            Line($"hold = \"{draw.OneOf("width", "width", "angle")}\"");
        }

        Line(
            draw.Heads()
                ? $"[ends.\"{panel}\"]\nlower = {{ cut = \"fit\" }}\nupper = {{ cut = \"left long\", by = {draw.Value(18)} }}"
                : ""
        );
        return (job.ToString(), table.ToString());
    }
}
