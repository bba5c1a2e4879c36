/* SPDX-License-Identifier: Apache-2.0 */
/* core.i for Java: texts cross as bytes of UTF-8, because the texts of JNI are of another encoding, and what is refused
 * is raised with all that the library says of it. No class of SWIG is public. */
%module Core

%pragma(java) moduleclassmodifiers = "final class"
%pragma(java) jniclassclassmodifiers = "final class"
%pragma(java) jniclasscode = "  static { Library.load(); }"
%rename("Core%s", %$isclass) "";

%{
#include <jni.h>
static void core_raise(JNIEnv *env);
static char *core_text_in(JNIEnv *env, jbyteArray bytes);
static jbyteArray core_text_out(JNIEnv *env, const char *text);
%}
#define CORE_RAISE core_raise(jenv)

/* NULL is a text that is not given. */
%typemap(jni) char * "jbyteArray"
%typemap(jtype) char * "byte[]"
%typemap(jstype) char * "String"
%typemap(javain) char * "Texts.bytes($javainput)"
%typemap(javaout) char * { return Texts.string($jnicall); }
%typemap(in) char * {
  $1 = core_text_in(jenv, $input);
  if ($1 == NULL && $input != NULL) return $null;
}
%typemap(freearg) char * "free((char *)$1);"
%typemap(out) char * "$result = core_text_out(jenv, $1);"

/* The memory of an object is given back by delete, or when nobody has it any more, once; a call keeps its objects. */
%typemap(javaclassmodifiers) SWIGTYPE "final class"
%typemap(javainterfaces) struct Finding, struct Record, struct Vehicle "Held"
%typemap(javafinalize) SWIGTYPE ""
%typemap(javabody) SWIGTYPE %{
  private transient long swigCPtr;
  private final java.lang.ref.Cleaner.Cleanable cleanable;

  $javaclassname(long cPtr, boolean own) {
    swigCPtr = cPtr;
    cleanable = Memory.CLEANER.register(this, () -> CoreJNI.delete_$javaclassname(cPtr));
  }

  static long getCPtr($javaclassname of) {
    return of == null ? 0 : of.swigCPtr;
  }
%}
%typemap(javadestruct, methodname = "delete", methodmodifiers = "public") SWIGTYPE {
    swigCPtr = 0;
    cleanable.clean();
  }

%include "../core.i"

%{
static char *core_text_in(JNIEnv *env, jbyteArray bytes) {
  const jsize size = bytes != NULL ? (*env)->GetArrayLength(env, bytes) : 0;
  char *text = bytes != NULL ? (char *)malloc((size_t)size + 1) : NULL;
  if (text != NULL) {
    (*env)->GetByteArrayRegion(env, bytes, 0, size, (jbyte *)text);
    text[size] = '\0';
  } else if (bytes != NULL) {
    SWIG_JavaThrowException(env, SWIG_JavaOutOfMemoryError, "there is no memory left");
  }
  return text;
}

static jbyteArray core_text_out(JNIEnv *env, const char *text) {
  const size_t size = text != NULL ? strlen(text) : 0;
  jbyteArray bytes = text != NULL && !(*env)->ExceptionCheck(env) ? (*env)->NewByteArray(env, (jsize)size) : NULL;
  if (bytes != NULL)
    (*env)->SetByteArrayRegion(env, bytes, 0, (jsize)size, (const jbyte *)text);
  return bytes;
}

/* Takes the text over. */
static bool core_put(JNIEnv *env, jobjectArray into, int index, const char *text) {
  jbyteArray bytes = core_text_out(env, text);
  if (bytes != NULL) {
    (*env)->SetObjectArrayElement(env, into, index, bytes);
    (*env)->DeleteLocalRef(env, bytes);
  }
  return !(*env)->ExceptionCheck(env);
}

/* Status, field and text, and then the sentence in each language. */
static jobjectArray core_said(JNIEnv *env) {
  const int languages = (int)rodt_catalogue_count();
  jclass of = (*env)->FindClass(env, "[B");
  jobjectArray said = of != NULL ? (*env)->NewObjectArray(env, 3 + languages, of, NULL) : NULL;
  bool good = said != NULL && core_put(env, said, 0, error_status()) && core_put(env, said, 1, error_field()) &&
              core_put(env, said, 2, error_text());
  for (int i = 0; good && i < languages; i++) {
    char *sentence = error_say(language(i));
    good = core_put(env, said, 3 + i, sentence);
    free(sentence);
  }
  return good ? said : NULL;
}

static void core_raise(JNIEnv *env) {
  jobjectArray said = core_said(env);
  jclass of = said != NULL ? (*env)->FindClass(env, "rodtravel/RodtravelException") : NULL;
  jmethodID make = of != NULL ? (*env)->GetMethodID(env, of, "<init>", "([[BII)V") : NULL;
  jobject made = make != NULL ? (*env)->NewObject(env, of, make, said, (jint)error_column(), (jint)error_line()) : NULL;
  if (made != NULL && !(*env)->ExceptionCheck(env))
    (*env)->Throw(env, (jthrowable)made);
}
%}
