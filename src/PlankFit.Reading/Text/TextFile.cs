using System.Text;
using PlankFit.Planking.Findings;

namespace PlankFit.Reading.Text;

/// <summary>A file's bytes and its text; or the finding that says why there is none.</summary>
public sealed record TextFile(byte[] Bytes, string? Text, Finding? Fault)
{
    /// <summary>A job or a table is a few kilobytes; beyond this something else has been named, bytes.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(
        encoderShouldEmitUTF8Identifier: false,
        throwOnInvalidBytes: true
    );

    /// <summary>Reads a UTF-8 file, with or without its mark. Never throws for what is on the disk.</summary>
    /// <param name="shownAs">How messages name the file.</param>
    /// <param name="mostBytes">Beyond this something else has been named.</param>
    public static TextFile Read(string path, string shownAs, int mostBytes = MostBytes)
    {
        try
        {
            if (OrdinaryFile.Refusal(path) is { } refusal)
            {
                return Wrong(shownAs, refusal);
            }

            using FileStream stream = File.OpenRead(path);
            byte[] bytes = new byte[mostBytes + 1];
            int length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return length > mostBytes
                ? Wrong(
                    shownAs,
                    $"is more than {mostBytes / 1024 / 1024} MB: this is not a job or a table of offsets"
                )
                : Decode(bytes[..length], shownAs);
        }
        catch (Exception e)
            when (e
                    is IOException
                        or UnauthorizedAccessException
                        or ArgumentException
                        or NotSupportedException
                        or System.Security.SecurityException
            )
        {
            return Wrong(shownAs, $"cannot be read: {e.Message}");
        }
    }

    /// <summary>The bytes as UTF-8 text.</summary>
    public static TextFile Decode(byte[] bytes, string shownAs)
    {
        if (bytes is [(byte)'P', (byte)'K', 3, 4, ..])
        {
            return Wrong(
                shownAs,
                "is a workbook or another packed file, not text: save the sheet that holds the table as CSV",
                bytes
            );
        }

        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            return Wrong(shownAs, "is UTF-16: save it as UTF-8", bytes);
        }

        ReadOnlySpan<byte> body = bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsSpan(3) : bytes;
        try
        {
            return new(bytes, Strict.GetString(body), null);
        }
        catch (DecoderFallbackException e)
        {
            int line = 1 + body[..Math.Clamp(e.Index, 0, body.Length)].Count((byte)'\n');
            return Wrong(
                FormattableString.Invariant($"{shownAs}, line {line}"),
                "the file is not UTF-8 text: save it as UTF-8",
                bytes
            );
        }
    }

    private static TextFile Wrong(string where, string message, byte[]? bytes = null) =>
        new(bytes ?? [], null, new(Severity.Error, where, message));
}
