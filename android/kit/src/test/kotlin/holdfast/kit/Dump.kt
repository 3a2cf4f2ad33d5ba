package holdfast.kit

import holdfast.core.Exercise
import holdfast.core.Mass
import java.time.LocalDate
import java.util.UUID
import kotlin.reflect.KProperty1
import kotlin.reflect.full.memberProperties
import kotlin.reflect.full.primaryConstructor
import kotlin.reflect.full.superclasses
import kotlin.time.Duration
import kotlinx.serialization.json.JsonArray
import kotlinx.serialization.json.JsonElement
import kotlinx.serialization.json.JsonNull
import kotlinx.serialization.json.JsonObject
import kotlinx.serialization.json.JsonPrimitive

/** The field that says which variant it is, for those the core writes with their fields. */
private val TAGS = mapOf("PieceKindView" to "kind", "Reason" to "rule", "Row" to "row", "Tap" to "tap")

/** A record as JSON, in the shape the core's own has. */
fun dump(value: Any?): JsonElement =
    when (value) {
        null -> JsonNull
        is String -> JsonPrimitive(value)
        is Boolean -> JsonPrimitive(value)
        is Number -> JsonPrimitive(value)
        is UInt -> JsonPrimitive(value.toLong())
        is ULong -> JsonPrimitive(value.toLong())
        is List<*> -> JsonArray(value.map(::dump))
        is Duration -> JsonPrimitive(value.inWholeMilliseconds)
        is UUID,
        is LocalDate -> JsonPrimitive(value.toString())
        is Mass -> JsonPrimitive(value.tenNg)
        is Exercise -> JsonPrimitive(listOfNotNull(value.movement, value.option).joinToString("/"))
        is Enum<*> -> JsonPrimitive(value.name.lowercase().replace('_', '-'))
        else -> record(value)
    }

private fun record(value: Any): JsonObject {
    val type = value::class
    val tag = type.superclasses.firstNotNullOfOrNull { TAGS[it.simpleName] }
    val variant = tag?.let { it to JsonPrimitive(words(type.simpleName!!, '-')) }
    val properties = type.memberProperties.associateBy { it.name }
    val names = type.primaryConstructor?.parameters.orEmpty().map { it.name!! }
    val fields =
        names.map { name ->
            @Suppress("UNCHECKED_CAST")
            words(name, '_') to dump((properties.getValue(name) as KProperty1<Any, *>).get(value))
        }
    return JsonObject((listOfNotNull(variant) + fields).toMap())
}

private fun words(name: String, between: Char): String =
    name.replace(Regex("(?<=[a-z0-9])(?=[A-Z])"), between.toString()).lowercase()
