using CsCheck;
using PlankFit.Reading.Offsets;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Offsets;

/// <summary>A station or a row more or fewer: those cells, and nothing else.</summary>
public sealed class TableShapeTests
{
    private const string Text =
        "# from the book\r\nline,measure,0,\"1,5\",3\r\n,position,0,600,1200\r\nkeel,height,1,2\r\n\r\nchine,height,1,2,3 # said\r\n";

    private static TableCells Cells(string text) => TableCells.Of(text);

    [Fact]
    public void AStationBetweenAndAtTheEnd()
    {
        Assert.Equal(
            "# from the book\r\nline,measure,0,\"2,=a\",\"1,5\",3\r\n,position,0,300,600,1200\r\nkeel,height,1,,2\r\n\r\nchine,height,1,,2,3 # said\r\n",
            TableShape.WithStation(Cells(Text), 3, "2,=a", "300")
        );
        // A row that ends before it is as good as empty there.
        Assert.Equal(
            "# from the book\r\nline,measure,0,\"1,5\",3,4\r\n,position,0,600,1200,1800\r\nkeel,height,1,2\r\n\r\nchine,height,1,2,3 # said,\r\n",
            TableShape.WithStation(Cells(Text), 5, "4", "1800")
        );
    }

    [Fact]
    public void AStationFewer()
    {
        Assert.Equal(
            "# from the book\r\nline,measure,0,3\r\n,position,0,1200\r\nkeel,height,1\r\n\r\nchine,height,1,3 # said\r\n",
            TableShape.WithoutStation(Cells(Text), 3)
        );
        Assert.Null(TableShape.WithoutStation(Cells("line,measure,0\nkeel,height,1\n"), 2));
    }

    [Fact]
    public void ARowMoreAndARowFewer()
    {
        string with = TableShape.WithRow(Cells(Text), 3, "a, b", "height")!;
        Assert.Equal(
            "# from the book\r\nline,measure,0,\"1,5\",3\r\n,position,0,600,1200\r\nkeel,height,1,2\r\n\"a, b\",height,,,\r\n\r\nchine,height,1,2,3 # said\r\n",
            with
        );
        Assert.Equal(Text, TableShape.WithoutRow(Cells(with), 4));
    }

    [Theory]
    [InlineData(1, "x")]
    [InlineData(6, "x")]
    [InlineData(3, "")]
    [InlineData(3, "x\ny")]
    [InlineData(-1, "x")]
    public void NoStationWhereThereIsNoRoom(int column, string name) =>
        Assert.Null(TableShape.WithStation(Cells(Text), column, name, ""));

    [Theory]
    [InlineData(0, "x")]
    [InlineData(4, "x")]
    [InlineData(99, "x")]
    [InlineData(-1, "x")]
    [InlineData(2, "#x")]
    [InlineData(2, "x\ny")]
    public void NoRowWhereThereIsNone(int after, string line)
    {
        Assert.Null(TableShape.WithRow(Cells(Text), after, line, "height"));
        Assert.Null(TableShape.WithoutRow(Cells(Text), 1));
    }

    /// <summary>What is put in and taken out again leaves the text of any table as it was, whatever its separator and its ends of line.</summary>
    [Fact]
    public void PutInAndTakenOutItIsAsItWas() =>
        Gen.Select(
                Gen.Int[1, 5],
                Gen.Int[1, 5],
                Gen.Int[0, 2].Select(i => ",;\t"[i]),
                Gen.Bool.Select(b => b ? "\n" : "\r\n"),
                Gen.Int[0, 100]
            )
            .Sample(
                (stations, rows, separator, newLine, at) =>
                {
                    string text = string.Join(
                        newLine,
                        Enumerable
                            .Range(0, rows)
                            .Select(r =>
                                string.Join(
                                    separator,
                                    Enumerable.Range(0, 2 + stations).Select(c => $"{r}\"{c}")
                                )
                            )
                            .Prepend(
                                string.Join(
                                    separator,
                                    Enumerable.Range(0, 2 + stations).Select(c => $"s{c}")
                                )
                            )
                    );
                    int column = 2 + (at % (stations + 1)),
                        row = at % (rows + 1);
                    string wide = TableShape.WithStation(Cells(text), column, "new", "1")!,
                        tall = TableShape.WithRow(Cells(text), row, "new", "height")!;
                    Assert.Equal(text, TableShape.WithoutStation(Cells(wide), column));
                    Assert.Equal(text, TableShape.WithoutRow(Cells(tall), row + 1));
                },
                iter: LongRuns.Of(100, 2000)
            );
}
