using System.Text;
using System.Text.RegularExpressions;
using PlankFit.Hashing;

namespace PlankFit.Reading.AsBuilt;

/// <summary>
/// The checksum that a record carries in itself: SHA-256 (FIPS 180-4) of the whole text as UTF-8 with its own digits left out, lines ended as on Unix, in 64
/// hexadecimal digits.
/// </summary>
internal static partial class RecordChecksum
{
    /// <summary>The member before its digits are known.</summary>
    public const string Empty = "\"checksum\": \"\"";

    /// <summary>The member stands at the very head of the file, so far in at most.</summary>
    private const int Head = 100;

    /// <param name="text">With the member empty.</param>
    public static string Written(string text) =>
        text.Insert(text.IndexOf(Empty, StringComparison.Ordinal) + Empty.Length - 1, Of(text));

    /// <summary>Why a text is not as it was written; null where it is.</summary>
    public static string? WhyNot(string text)
    {
        string lines = text.Replace("\r\n", "\n", StringComparison.Ordinal);
        Match head = Member().Match(lines[..Math.Min(lines.Length, 2 * Head)]);
        if (!head.Success || head.Index > Head)
        {
            return "it has no checksum in its first lines: this is not a record of sawn planks as `plankfit sawn` writes it, or its head is damaged";
        }

        Group digits = head.Groups[1];
        return Of(lines.Remove(digits.Index, digits.Length)) == digits.Value
            ? null
            : "its checksum does not agree with what it holds: it was damaged, or changed by hand, since `plankfit sawn` wrote it, and a plank may be other than the one that was sawn";
    }

    private static string Of(string text) => Sha256Hash.HexOf(Encoding.UTF8.GetBytes(text));

    [GeneratedRegex("\"checksum\": \"([0-9a-f]{64})\"", RegexOptions.CultureInvariant)]
    private static partial Regex Member();
}
