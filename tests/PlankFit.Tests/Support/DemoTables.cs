using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Support;

/// <summary>
/// The demo hulls' tables, read by the plainest reader there can be (our own files only, no faults handled), so that what is tested on
/// them does not lean on the program's reader.
/// </summary>
public static class DemoTables
{
    public static readonly ImmutableArray<(string Hull, LengthUnit Unit)> All =
    [
        ("survey-launch", LengthUnit.Millimetre),
        ("pilot-skiff", LengthUnit.FeetInchesEighths),
        ("tender", LengthUnit.Millimetre),
    ];

    /// <summary>The tests have a launch of their own, with the figures that they know by heart, so that the demo may be changed as it pleases.</summary>
    public static string Folder(string hull) =>
        Directory.Exists(Beside("tests", hull)) ? Beside("tests", hull) : Demo(hull);

    /// <summary>Of a hull that comes with the program.</summary>
    public static string Demo(string hull) => Beside("", hull);

    private static string Beside(string part, string hull) =>
        Path.GetFullPath(
            Path.Combine(Path.GetDirectoryName(ThisFile())!, "..", "..", "..", part, "hulls", hull)
        );

    private static string ThisFile([CallerFilePath] string here = "") => here;

    public static OffsetTable Read(string hull)
    {
        string[][] rows =
        [
            .. File.ReadAllLines(Path.Combine(Folder(hull), "offsets.csv"))
                .Where(l => !l.StartsWith('#'))
                .Select(l => l.Split(',')),
        ];
        ImmutableArray<double?> Row(string line, string measure)
        {
            string[]? row = rows.FirstOrDefault(r => r[0] == line && r[1] == measure);
            return row is null
                ? default
                : [.. row[2..].Select(c => c.Length == 0 ? (double?)null : Millimetres(c))];
        }

        ImmutableArray<double?> positions = Row("", "position");
        return new(
            [.. rows[0][2..].Select((name, i) => new Station(name, positions[i]!.Value))],
            [
                .. rows[1..]
                    .Select(r => r[0])
                    .Where(n => n.Length > 0)
                    .Distinct()
                    .Select(n => new OffsetLine(
                        n,
                        Row(n, "position") is { IsDefault: false } own
                            ? own
                            : [.. positions.Select(_ => (double?)null)],
                        Row(n, "height"),
                        Row(n, "half-breadth")
                    )),
            ]
        );
    }

    private static double Millimetres(string cell)
    {
        string[] feet = cell.Split('-', 3);
        if (feet.Length == 1)
        {
            return double.Parse(cell, CultureInfo.InvariantCulture);
        }

        double eighths = feet[2][0] - '0';
        eighths += feet[2][1..] switch
        {
            "" => 0,
            "+" => 0.5,
            "-" => -0.5,
            " 1/4" => 0.25,
            " 3/4" => 0.75,
            _ => throw new FormatException(cell),
        };
        double inches =
            (12 * int.Parse(feet[0], CultureInfo.InvariantCulture))
            + int.Parse(feet[1], CultureInfo.InvariantCulture);
        return 25.4 * (inches + (eighths / 8));
    }
}
