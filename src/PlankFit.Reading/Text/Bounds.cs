using System.Globalization;

namespace PlankFit.Reading.Text;

/// <summary>
/// How many of a thing a job may have: far above any boat that is built so, low enough that work, paper and files stay within what a small machine does in
/// minutes. What is beyond is refused before any work begins, since it is a slip (a unit, a count, a pasted file) and never a hull.
/// </summary>
internal static class Bounds
{
    /// <summary>Skins and cloths, or layers of a keel: the heaviest cold-moulded bottoms have about ten.</summary>
    public const int Layers = 40;

    /// <summary>Panels besides the bottom: there are no more letters for their planks.</summary>
    public const int Panels = 26;

    /// <summary>Tables of one kind, such as [[behind]]: a 30 m hull framed every 300 mm with forty stringers has 140.</summary>
    public const int Tables = 500;

    /// <summary>Entries of one list, such as frames or waterlines: 500 frames at 200 mm are 100 m of hull.</summary>
    public const int Entries = 500;

    /// <summary>Files of boards: one a rack or a yard.</summary>
    public const int Files = 50;

    /// <summary>Stations of a table of offsets: large ships are drawn with forty.</summary>
    public const int Stations = 500;

    /// <summary>Rows of a table of offsets, three a line: a lofting table of all diagonals, buttocks and waterlines has some sixty.</summary>
    public const int OffsetRows = 900;

    /// <summary>Rows of a file of boards, or of measurements: a day's taping is a few hundred.</summary>
    public const int Rows = 20_000;

    /// <summary>Boards on hand, counts counted, in all files: a timber yard, not a rack.</summary>
    public const int Boards = 50_000;

    /// <summary>Planks of a layer on one side: 30 m of bottom in strips of 50 mm have some 450.</summary>
    public const int Planks = 2000;

    /// <summary>"up to 500 of them", with what to do about more.</summary>
    public static string Beyond(int count, int most, string what) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{count} {what}, and this program takes up to {most}: is a number or a unit wrong, or a line there many times? Take out what is not needed"
        );
}
