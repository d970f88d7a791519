using System.Globalization;
using System.Text;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Support.Chance;

/// <summary>
/// A whole job as files, by chance and by its seed alone: any hull, any units, any of the things that a job can ask for. What is laid from it is no demo, and so
/// tells what a demo never does.
/// </summary>
internal sealed class ChanceJob
{
    private readonly StringBuilder toml = new();
    private readonly Dictionary<string, string> files = [];
    private readonly Draw draw;
    private readonly ChanceHull hull;
    private readonly string[] skins;
    private readonly double thickness,
        width;

    private readonly bool stocked;

    private ChanceJob(int seed, bool stocked = false)
    {
        this.stocked = stocked;
        draw = new(seed);
        hull = new(draw);
        thickness = draw.Between(4, 13);
        width = Math.Min(draw.Between(70, 200), hull.BeamMm / 3);
        skins = [.. Enumerable.Range(1, draw.Whole(1, 3)).Select(i => $"skin {i}")];
        Head(seed);
        Layers();
        Ends();
        Features();
        files["job.toml"] = toml.ToString();
        files["offsets.csv"] = hull.Table;
    }

    /// <summary>Name and text of every file of the job.</summary>
    public static IReadOnlyDictionary<string, string> Files(int seed) => new ChanceJob(seed).files;

    /// <summary>Writes the job into the folder, and tells where its job.toml is.</summary>
    public static string Write(int seed, string folder) => Write(Files(seed), folder);

    /// <summary>The same with a stock by chance at any rate, <see cref="ChanceStock"/>, and no search: the first plan of cutting found.</summary>
    public static string WriteStocked(int seed, string folder) =>
        Write(new ChanceJob(seed, stocked: true).files, folder);

    private static string Write(IReadOnlyDictionary<string, string> files, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach ((string name, string text) in files)
        {
            File.WriteAllText(Path.Combine(folder, name), text);
        }

        return Path.Combine(folder, "job.toml");
    }

    private string Mm(double mm) => draw.Value(mm);

    private static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private void Line(string text) => toml.Append(text).Append('\n');

    private void Head(int seed)
    {
        string paper = draw.OneOf("A4", "A3", "Letter");
        Line($"[job]\nname = \"By chance {seed}\"\nunits = \"{LengthUnits.Name(draw.Unit)}\"");
        Line("[hull]\noffsets = \"offsets.csv\"\nkeel = \"keel edge\"\nchine = \"chine\"");
        Line($"offsets-are-to = \"{draw.OneOf("outside", "inside")}\"");
        Line($"keel-side = \"{draw.OneOf("plumb", "plumb", "square to plank")}\"");
        Line(hull.Round ? "between = [\"bilge\"]" : "");
        Line($"[output]\npaper = \"{paper}\"\npatterns = \"{draw.OneOf("long", "tiled")}\"");
        Line(
            $"dxf-units = \"{draw.OneOf("mm", "in")}\"\ncards = \"{draw.OneOf("pdf", "pdf-svg-png")}\""
        );
    }

    private void Layers()
    {
        bool aft = draw.Heads();
        double angle = draw.Between(38, 55);
        string hold = draw.OneOf("width", "width", "angle");
        for (int i = 0; i < skins.Length; i++)
        {
            if (i > 0 && draw.Heads(0.6))
            {
                Line($"[[layer]]\nkind = \"cloth\"\nname = \"cloth {i}\"\nthickness = {Mm(0.8)}");
            }

            Line($"[[layer]]\nname = \"{skins[i]}\"\nthickness = {Mm(thickness)}");
            Line($"width = {Mm(width)}\nangle = {N(angle)}\nhold = \"{hold}\"");
            Line($"heads = \"{(i % 2 == 0 == aft ? "aft" : "forward")}\"");
        }
    }

    private void Ends()
    {
        double by = draw.Between(10, 40);
        Line($"[ends]\nchine = {{ cut = \"left long\", by = {Mm(by)} }}");
        if (draw.Heads())
        {
            double to = hull.LengthMm * draw.Between(0.1, 0.3);
            Line($"[[ends.zone]]\nfrom = 0\nto = {Mm(to)}");
            Line($"chine = {{ cut = \"fit\", allowance = {Mm(12)} }}");
        }
    }

    private void Features()
    {
        if (draw.Heads(0.6))
        {
            Keel();
        }

        if (draw.Heads(0.7))
        {
            Behind();
        }

        if (draw.Heads(0.5))
        {
            Line("[timber]\nplanks = \"douglas-fir\"\ngrain = \"quarter\"");
        }

        if (draw.Heads(0.5))
        {
            Line(
                $"[setting-up]\nframe-thickness = {Mm(24)}\nwaterlines = [{Mm(150)}, {Mm(300)}]"
                    + $"\ntopside = {{ thickness = {Mm(12)}, lap = \"bottom laps topside\", flare = 10 }}"
            );
        }

        bool boards = draw.Heads(0.25);
        if (stocked)
        {
            Stock();
        }
        else if (boards)
        {
            Boards();
        }

        if (draw.Heads(0.3))
        {
            Measured();
        }
    }

    private void Keel()
    {
        Line($"[keel]\nmost-deadrise = {N(draw.Between(30, 42))}");
        for (int i = 0; i < skins.Length; i++)
        {
            Line($"[[keel-layer]]\nname = \"keel {i + 1}\"\nmeets = \"{skins[i]}\"");
            Line($"thickness = {Mm(thickness)}\nhalf-width = \"mitre\"");
        }
    }

    private void Behind()
    {
        int stringers = draw.Whole(1, 3);
        for (int i = 0; i < stringers; i++)
        {
            double from = hull.BeamMm * (i + 1) / (stringers + 1.0);
            Line($"[[behind]]\nname = \"stringer {(char)('A' + i)}\"\nkind = \"stringer\"");
            Line($"from-keel = {Mm(from)}\nwidth = {Mm(40)}");
            Line($"from = {Mm(hull.LengthMm * 0.35)}");
        }

        int frame = draw.Whole(2, hull.StationsMm.Length - 2);
        Line($"[[behind]]\nname = \"frame {frame}\"\nkind = \"frame\"");
        Line($"station = \"{frame}\"\nwidth = {Mm(35)}");
        if (draw.Heads(0.6))
        {
            Line("[fastenings]\nkind = \"screw and pad\"");
            Line($"spacing = {Mm(draw.Between(60, 110))}\nbacking-depth = {Mm(45)}");
        }

        if (draw.Heads(0.6))
        {
            double longest = hull.BeamMm * draw.Between(0.9, 1.3);
            string cut = draw.OneOf("along the backing", "square");
            Line($"[joints]\nlongest = {Mm(longest)}\nshortest = {Mm(longest / 5)}");
            Line($"kind = \"{draw.OneOf("butt", "scarf")}\"\ncut = \"{cut}\"");
            Line(
                $"[[joints.rule]]\nwhat = \"next plank\"\ndistance = {Mm(150)}\nsource = \"ours\""
            );
        }
    }

    private void Boards()
    {
        Line($"[nest]\nbuy = \"yard.csv\"\nstock = \"stock.csv\"\nrounds = 1\nkerf = {Mm(3)}");
        string size = $"{draw.Cell(width + 4)},{draw.Cell(thickness + 0.6)}";
        files["stock.csv"] =
            "board,count,length,width,thickness\n"
            + $"R-1,{draw.Whole(1, 9)},{draw.Cell(draw.Between(2500, 4500))},{size}\n";
        files["yard.csv"] =
            "board,length,width,thickness\n"
            + $"Y-1,{draw.Cell(3000)},{size}\nY-2,{draw.Cell(draw.Between(3600, 5400))},{size}\n";
    }

    private void Stock()
    {
        var stock = new ChanceStock(draw, width, thickness, hull.BeamMm);
        Line("[nest]\nrounds = 0\nstock = \"stock.csv\"\nbuy = \"yard.csv\"");
        Line($"kerf = {Mm(draw.Between(1.5, 4))}\nend = {Mm(draw.Between(0, 8))}");
        Line(draw.Heads(0.3) ? "turn-face-for-face = true" : "");
        files["stock.csv"] = stock.Rack;
        files["yard.csv"] = stock.Yard;
    }

    private void Measured()
    {
        int station = hull.StationsMm.Length / 2;
        Line("[as-built]\nmeasured = \"measured.csv\"");
        double from = hull.StationsMm[station];
        files["measured.csv"] =
            "what,where,side,value\n"
            + $"girth,{station},starboard,{draw.Cell(hull.GirthMm(from) + draw.Between(-4, 4))}\n"
            + $"girth,{station},port,{draw.Cell(hull.GirthMm(from) + draw.Between(-4, 4))}\n";
    }
}
