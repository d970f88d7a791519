using System.Text;

namespace PlankFit.Tests.Support.Chance;

/// <summary>
/// A rack and a yard by chance, as they may stand in any shop: boards long and short, narrow and wide, with faults and bad ends, and sheets with their grain along
/// or across, in any mixture. What the planks take of a sheet may be next to nothing, or all of many.
/// </summary>
internal sealed class ChanceStock
{
    private readonly Draw draw;
    private readonly double width,
        thickness,
        longest;

    /// <param name="width">Of the planks that come out of it, mm.</param>
    /// <param name="beam">Half-breadth of the hull: planks are some one and a half times as long.</param>
    public ChanceStock(Draw draw, double width, double thickness, double beam)
    {
        this.draw = draw;
        this.width = width;
        this.thickness = thickness;
        longest = 1.7 * beam;
        Rack = Text("R", draw.Whole(1, 4), counted: true);
        Yard = Text("Y", draw.Whole(1, 3), counted: false);
    }

    public string Rack { get; }

    public string Yard { get; }

    private string Text(string sort, int rows, bool counted)
    {
        var text = new StringBuilder("board,count,length,width,thickness,kind,grain,ends,faults\n");
        for (int row = 1; row <= rows; row++)
        {
            string id = draw.Heads(0.2) ? $"{sort}-behind-the-bandsaw-{row}" : $"{sort}-{row}",
                count = counted ? $"{draw.Whole(1, 4)}" : "";
            text.Append($"{id},{count},{(draw.Heads(0.4) ? Sheet() : Board())}\n");
        }

        return text.ToString();
    }

    private string Board()
    {
        double length = draw.OneOf(1.1, 1.5, 2.5, 4) * longest * draw.Between(0.9, 1.2),
            lanes = draw.OneOf(1, 1, 2, 3, 5);
        string faults = "",
            ends = "";
        if (draw.Heads(0.3))
        {
            double from = length * draw.Between(0.3, 0.7);
            faults = $"{draw.Cell(from)}..{draw.Cell(from + draw.Between(15, 60))}";
        }

        if (draw.Heads(0.3))
        {
            ends = $"{draw.Cell(draw.Between(10, 60))}/{draw.Cell(draw.Between(10, 60))}";
        }

        return $"{Size(length, (lanes * (width + 4)) + draw.Between(1, 10))},board,,{ends},{faults}";
    }

    private string Sheet()
    {
        (double length, double across) = draw.OneOf(
            (2440.0, 1220.0),
            (2500.0, 1250.0),
            (3050.0, 1525.0),
            (1220.0, 2440.0)
        );
        string grain = draw.OneOf("along", "along", "across"),
            faults = "";
        if (draw.Heads(0.3))
        {
            double x = draw.Between(100, 900),
                y = draw.Between(100, 900);
            faults = $"{draw.Cell(x)}..{draw.Cell(x + 70)} x {draw.Cell(y)}..{draw.Cell(y + 90)}";
        }

        return $"{Size(length, across)},sheet,{grain},,{faults}";
    }

    private string Size(double length, double across) =>
        $"{draw.Cell(length)},{draw.Cell(across)},{draw.Cell(thickness + draw.Between(0.3, 0.7))}";
}
