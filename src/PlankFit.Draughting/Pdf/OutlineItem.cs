using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace PlankFit.Draughting.Pdf;

/// <summary>A line of the outline with its number as an object and those of its neighbours; 0 where there is none.</summary>
internal sealed record OutlineItem(
    BookMark Mark,
    int Number,
    int Parent,
    int Before,
    int After,
    int First,
    int Last
)
{
    /// <summary>Numbers lines in order, each before what lies within it.</summary>
    /// <param name="next">The first number that is free; so many as <paramref name="items"/> grows by are taken.</param>
    /// <returns>The numbers of the first and the last of them.</returns>
    public static (int First, int Last) Numbered(
        ImmutableArray<BookMark> marks,
        int parent,
        List<OutlineItem> items,
        int next
    )
    {
        int[] numbers = new int[marks.Length];
        foreach ((int i, BookMark mark) in marks.Index())
        {
            numbers[i] = next;
            next += 1 + All(mark.Within);
        }

        foreach ((int i, BookMark mark) in marks.Index())
        {
            int place = items.Count;
            items.Add(null!);
            (int first, int last) = mark.Within.IsEmpty
                ? (0, 0)
                : Numbered(mark.Within, numbers[i], items, numbers[i] + 1);
            items[place] = new(
                mark,
                numbers[i],
                parent,
                i > 0 ? numbers[i - 1] : 0,
                i + 1 < numbers.Length ? numbers[i + 1] : 0,
                first,
                last
            );
        }

        return (numbers[0], numbers[^1]);
    }

    public string Dictionary(Func<int, string> destination)
    {
        var text = new StringBuilder("<</Title <FEFF");
        text.Append(Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(Mark.Name)));
        text.Append("> /Parent ").Append(Reference(Parent));
        foreach (
            (string key, int number) in new[]
            {
                ("Prev", Before),
                ("Next", After),
                ("First", First),
                ("Last", Last),
            }
        )
        {
            if (number != 0)
            {
                text.Append(" /").Append(key).Append(' ').Append(Reference(number));
            }
        }

        if (!Mark.Within.IsEmpty)
        {
            // Negative: shut, with so many below it.
            text.Append(CultureInfo.InvariantCulture, $" /Count -{Mark.Within.Length}");
        }

        return text.Append(" /Dest /").Append(destination(Mark.Page)).Append(">>").ToString();
    }

    private static int All(ImmutableArray<BookMark> marks) =>
        marks.Length + marks.Sum(m => All(m.Within));

    private static string Reference(int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} 0 R");
}
