using System.Globalization;
using System.Text;

namespace PlankFit.Draughting.Pdf;

/// <summary>Objects that are put after a PDF's own bytes, and the cross-reference section that finds them there.</summary>
/// <param name="beginsAt">How long the file is.</param>
internal sealed class PdfUpdate(int beginsAt)
{
    private readonly StringBuilder text = new("\n");
    private readonly SortedDictionary<int, int> placeOf = [];

    public void Object(int number, string dictionary)
    {
        placeOf.Add(number, beginsAt + text.Length);
        text.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{dictionary}\nendobj\n");
    }

    /// <param name="size">One more than the highest number of all.</param>
    public byte[] Ended(int size, PdfEnd before)
    {
        int tableAt = beginsAt + text.Length;
        // Object 0 heads every section: some readers take one without it to be numbered wrongly.
        text.Append("xref\n0 1\n0000000000 65535 f \n");
        foreach ((int number, int place) in placeOf)
        {
            if (!placeOf.ContainsKey(number - 1))
            {
                int run = 1;
                while (placeOf.ContainsKey(number + run))
                {
                    run++;
                }

                text.Append(CultureInfo.InvariantCulture, $"{number} {run}\n");
            }

            text.Append(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n");
        }

        text.Append(
            CultureInfo.InvariantCulture,
            $"trailer\n<</Size {size}\n/Root {before.Root} 0 R{before.Rest}\n/Prev {before.TableAt}>>\nstartxref\n{tableAt}\n%%EOF\n"
        );
        return Encoding.Latin1.GetBytes(text.ToString());
    }
}
